/** Shows the consequences of an edit while it is typed, and says what is not saved. */

import { formText, refresh, shadeForm } from "./refresh";

const TYPING_PAUSE_MS = 40;

/** Wires the form of the shade, before anything that was kept is put back into it. */
export function startShadeForm(): void {
  const form = shadeForm();
  if (!form) return;
  const saved = fingerprint(form);
  let timer = 0;
  form.addEventListener("input", () => {
    markEdited(form, fingerprint(form) !== saved || form.dataset.typed === "yes");
    window.clearTimeout(timer);
    timer = window.setTimeout(() => refresh("all"), TYPING_PAUSE_MS);
  });
  form.addEventListener("reset", () => window.setTimeout(() => wasReset(form), 0));
  markEdited(form, form.dataset.typed === "yes");
  if (form.dataset.edited === "yes") refresh("all");
}

function fingerprint(form: HTMLFormElement): string {
  return JSON.stringify(formText(form));
}

function markEdited(form: HTMLFormElement, edited: boolean): void {
  form.dataset.edited = edited ? "yes" : "no";
}

function wasReset(form: HTMLFormElement): void {
  form.dispatchEvent(new Event("input", { bubbles: true }));
}
