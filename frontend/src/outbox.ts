/** Keeps what is typed and not yet saved, so that a sleeping tablet loses nothing. */

import { formText, isEdited, shadeForm } from "./refresh";

/** One form as typed, the version it was typed over, and whether it was sent. */
interface Letter {
  version: number;
  fields: [string, string][];
  sent: boolean;
}

const KEY = `foldwright ${location.pathname}`;

/** Brings back what was typed before, and keeps what is typed from now on. */
export function startOutbox(): void {
  const form = shadeForm();
  if (!form) return;
  const letter = kept();
  form.addEventListener("input", () => (isEdited() ? keep(form, false) : forget()));
  form.addEventListener("reset", () => showNote(false));
  form.addEventListener("submit", () => keep(form, true));
  if (letter && isPending(letter, form)) bringBack(form, letter);
  else forget();
}

/** A sent letter has arrived once the page shows a later version, or shows the form as typed. */
function isPending(letter: Letter, form: HTMLFormElement): boolean {
  if (form.dataset.typed === "yes") return false;
  return !letter.sent || versionOf(form) === letter.version;
}

function bringBack(form: HTMLFormElement, letter: Letter): void {
  for (const [name, text] of letter.fields) fill(form, name, text);
  for (const tick of ticks(form)) tick.checked = letter.fields.some(([name]) => name === tick.name);
  form.dispatchEvent(new Event("input", { bubbles: true }));
  showNote(isEdited());
}

function showNote(shown: boolean): void {
  const note = document.querySelector<HTMLElement>("[data-brought-back]");
  if (note) note.hidden = !shown;
}

function fill(form: HTMLFormElement, name: string, text: string): void {
  const field = form.elements.namedItem(name);
  if (field instanceof HTMLSelectElement) field.value = text;
  if (field instanceof HTMLInputElement && isTyped(field)) field.value = text;
}

function isTyped(field: HTMLInputElement): boolean {
  return field.type !== "checkbox" && field.type !== "hidden";
}

function ticks(form: HTMLFormElement): HTMLInputElement[] {
  return Array.from(form.querySelectorAll<HTMLInputElement>("input[type=checkbox]"));
}

function versionOf(form: HTMLFormElement): number {
  return Number(form.dataset.version);
}

function keep(form: HTMLFormElement, sent: boolean): void {
  const letter: Letter = { version: versionOf(form), fields: formText(form), sent };
  try {
    localStorage.setItem(KEY, JSON.stringify(letter));
  } catch {
    // A browser that keeps nothing still saves what is sent.
  }
}

function kept(): Letter | null {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? "null") as Letter | null;
  } catch {
    return null;
  }
}

function forget(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Nothing was kept.
  }
}
