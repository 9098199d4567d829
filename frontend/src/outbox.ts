/** Keeps what is typed and not yet saved, so that a sleeping tablet loses nothing. */

import { isEdited, shadeForm } from "./refresh";

/** The fields that a person changed, by name; what nobody touched is not kept. */
type Letter = Record<string, string>;

type Entry = HTMLInputElement | HTMLSelectElement;

const KEY = `foldwright ${location.pathname}`;

/** Brings back what was typed before, and keeps what is typed from now on. */
export function startOutbox(): void {
  const form = shadeForm();
  if (!form) return;
  const before = kept();
  const unsaved = form.dataset.typed === "yes" ? before : {};
  form.addEventListener("input", () => (isEdited() ? keep(form, unsaved) : forget()));
  form.addEventListener("reset", () => showNote(false));
  if (form.dataset.typed !== "yes") bringBack(form, before);
}

/** Only the person's own edits come back, so that what another saved meanwhile stays. */
function bringBack(form: HTMLFormElement, letter: Letter): void {
  const news = entriesOf(form).filter((entry) => isNews(entry, letter[entry.name]));
  if (news.length === 0) return forget();
  for (const entry of news) type(entry, letter[entry.name] ?? "");
  form.dispatchEvent(new Event("input", { bubbles: true }));
  showNote(true);
}

function isNews(entry: Entry, text: string | undefined): boolean {
  return text !== undefined && text !== asServed(entry);
}

function entriesOf(form: HTMLFormElement): Entry[] {
  return Array.from(form.querySelectorAll<Entry>("input[name]:not([type=hidden]), select[name]"));
}

function type(entry: Entry, text: string): void {
  if (entry instanceof HTMLSelectElement || entry.type !== "checkbox") entry.value = text;
  else entry.checked = text === entry.value;
}

function textOf(entry: Entry): string {
  if (entry instanceof HTMLSelectElement || entry.type !== "checkbox") return entry.value;
  return entry.checked ? entry.value : "";
}

function asServed(entry: Entry): string {
  if (entry instanceof HTMLInputElement) {
    if (entry.type !== "checkbox") return entry.defaultValue;
    return entry.defaultChecked ? entry.value : "";
  }
  const options = Array.from(entry.options);
  return (options.find((option) => option.defaultSelected) ?? options[0])?.value ?? "";
}

function keep(form: HTMLFormElement, unsaved: Letter): void {
  const changed = entriesOf(form).filter((entry) => textOf(entry) !== asServed(entry));
  const letter = Object.fromEntries(changed.map((entry) => [entry.name, textOf(entry)]));
  try {
    localStorage.setItem(KEY, JSON.stringify({ ...unsaved, ...letter }));
  } catch {
    // A browser that keeps nothing still saves what is sent.
  }
}

function kept(): Letter {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? "{}") as Letter;
  } catch {
    return {};
  }
}

function forget(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Nothing was kept.
  }
}

function showNote(shown: boolean): void {
  const note = document.querySelector<HTMLElement>("[data-brought-back]");
  if (note) note.hidden = !shown;
}
