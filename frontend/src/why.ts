/** Opens the why of a figure beside it; without this module the same link leads to a page. */

import { formText, isEdited, raiseShare, shadeForm } from "./refresh";

const FIGURE = "a[data-why], a[data-figure]";

/** Wires every link that leads to a why, now and later. */
export function startWhy(): void {
  const dialog = document.querySelector<HTMLDialogElement>("dialog[data-why-dialog]");
  if (!dialog) return;
  document.addEventListener("click", (event) => void touched(event, dialog));
  dialog.addEventListener("click", (event) => closeOutside(event, dialog));
}

async function touched(event: MouseEvent, dialog: HTMLDialogElement): Promise<void> {
  const link = (event.target as Element).closest(FIGURE);
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  const address = link.getAttribute("href") ?? "";
  try {
    const response = await ask(address);
    if (!response.ok) throw new Error(response.statusText);
    show(dialog, await response.text());
  } catch {
    location.href = address;
  }
}

function ask(address: string): Promise<Response> {
  const url = new URL(address, location.href);
  url.searchParams.set("part", "why");
  url.searchParams.set("raise", raiseShare());
  const form = shadeForm();
  if (!form || !isEdited()) return fetch(url);
  return fetch(url, { method: "POST", body: new URLSearchParams(formText(form)) });
}

/** A browser gives the focus back to the touched figure when the dialog closes. */
function show(dialog: HTMLDialogElement, html: string): void {
  const body = dialog.querySelector("[data-why-body]");
  const fresh = new DOMParser().parseFromString(html, "text/html");
  body?.replaceChildren(...Array.from(fresh.body.childNodes));
  if (!dialog.open) dialog.showModal();
  dialog.scrollTop = 0;
}

function closeOutside(event: MouseEvent, dialog: HTMLDialogElement): void {
  if (event.target === dialog) dialog.close();
}
