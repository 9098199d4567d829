/** Asks the server for the shade as it now stands, one question at a time, the newest only. */

import { swapParts } from "./parts";

/** How much of the page is wanted: the drawing alone, or all that an edit may move. */
export type Extent = "drawing" | "all";

const FAILED =
  "The workroom does not answer. What you typed is kept here; start it again and go on.";

let wanted: Extent | undefined;
let busy = false;

/** Wants the drawing, or everything, redrawn as soon as the last answer is in. */
export function refresh(extent: Extent): void {
  wanted = wanted === "all" ? "all" : extent;
  if (!busy) void answerAll();
}

/** Gives the form of the shade, where the page has one. */
export function shadeForm(): HTMLFormElement | null {
  return document.querySelector<HTMLFormElement>("form[data-shade-form]");
}

/** Tells whether anything in the form differs from what is saved. */
export function isEdited(): boolean {
  return shadeForm()?.dataset.edited === "yes";
}

async function answerAll(): Promise<void> {
  busy = true;
  try {
    while (wanted !== undefined) {
      const extent = wanted;
      wanted = undefined;
      await answer(extent);
    }
  } finally {
    busy = false;
  }
}

async function answer(extent: Extent): Promise<void> {
  try {
    const response = await ask(extent);
    if (response.ok) swapParts(await response.text());
    markInvalid();
    say(response.ok ? "" : FAILED);
  } catch {
    say(FAILED);
  }
}

function ask(extent: Extent): Promise<Response> {
  const form = shadeForm();
  if (form && (extent === "all" || isEdited())) return askWithForm(form, extent);
  const url = new URL(document.body.dataset.drawing ?? "", location.href);
  url.searchParams.set("raise", raiseShare());
  return fetch(url);
}

function askWithForm(form: HTMLFormElement, extent: Extent): Promise<Response> {
  const body = new URLSearchParams(formText(form));
  body.set("raise", raiseShare());
  body.set("parts", extent);
  return fetch(form.dataset.preview ?? "", { method: "POST", body });
}

/** Gives the form as pairs of text; the server wants no files from it. */
export function formText(form: HTMLFormElement): [string, string][] {
  return Array.from(new FormData(form)).map(([name, value]) => [name, String(value)]);
}

/** Gives the share of the travel at which the shade is shown raised. */
export function raiseShare(): string {
  return document.querySelector<HTMLInputElement>("input[data-raise]")?.value ?? "0";
}

/** A field that has a fault beside it says so to a screen reader too. */
function markInvalid(): void {
  for (const field of Array.from(shadeForm()?.querySelectorAll("[aria-describedby]") ?? [])) {
    const says = document.getElementById(field.getAttribute("aria-describedby") ?? "");
    field.toggleAttribute("aria-invalid", false);
    if (says?.querySelector(".fault")) point(field);
  }
}

function point(field: Element): void {
  field.setAttribute("aria-invalid", "true");
  for (let at = field.closest("details"); at; at = at.parentElement?.closest("details") ?? null) {
    at.open = true;
  }
}

function say(words: string): void {
  const place = document.querySelector("[data-connection]");
  if (place && place.textContent !== words) place.textContent = words;
}
