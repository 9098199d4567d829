/** Keeps what is typed at the bench and not yet saved, step by step, over a sleep or a reload. */

type Draft = Record<string, string>;
type Entry = HTMLInputElement;

const TYPED = "input:not([type=hidden]):not([data-by])";

/** Keeps the form of a step as typed. */
export function keepDraft(form: HTMLFormElement): void {
  const draft: Draft = {};
  for (const entry of entriesOf(form)) {
    if (differs(entry)) draft[entry.name] = entry.value;
  }
  if (Object.keys(draft).length === 0) dropDraft(form);
  else write(form, draft);
}

/** Puts back what was typed in a step before. */
export function bringBackDraft(form: HTMLFormElement): void {
  const draft = read(form);
  for (const entry of entriesOf(form)) {
    const text = draft[entry.name];
    if (text === undefined) continue;
    if (entry.type === "radio") entry.checked = entry.value === text;
    else entry.value = text;
  }
}

/** Forgets what was typed in a step, once it is saved. */
export function dropDraft(form: HTMLFormElement): void {
  try {
    localStorage.removeItem(nameOf(form));
  } catch {
    // Nothing was kept.
  }
}

/** Tells whether a step holds anything typed and not saved. */
export function hasDraft(form: HTMLFormElement): boolean {
  return Object.keys(read(form)).length > 0;
}

function entriesOf(form: HTMLFormElement): Entry[] {
  return Array.from(form.querySelectorAll<Entry>(TYPED));
}

function differs(entry: Entry): boolean {
  if (entry.type === "radio") return entry.checked && !entry.defaultChecked;
  return entry.value !== entry.defaultValue;
}

function nameOf(form: HTMLFormElement): string {
  return `foldwright draft ${location.pathname} ${form.dataset.benchForm}`;
}

function read(form: HTMLFormElement): Draft {
  try {
    return JSON.parse(localStorage.getItem(nameOf(form)) ?? "{}") as Draft;
  } catch {
    return {};
  }
}

function write(form: HTMLFormElement, draft: Draft): void {
  try {
    localStorage.setItem(nameOf(form), JSON.stringify(draft));
  } catch {
    // A browser that keeps nothing still sends what is saved.
  }
}
