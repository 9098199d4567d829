/**
 * The bench card on a tablet: one step at a time, each tap saved as it is made.
 *
 * All steps are in the page, so that the work goes on while the workroom cannot be reached.
 */

import { BenchBox, freshKey, type Letter } from "./benchbox";
import { bringBackDraft, dropDraft, hasDraft, keepDraft } from "./drafts";
import { swapParts } from "./parts";

const RETRY_MS = 4000;
const SLOW_MS = 1000; // an entry not taken by then is shown as not saved
const UNDO = "undo";
const WAITS = "kept on this tablet, not saved yet";
const TYPED = "typed, not saved";
const UNREAD = "Something typed cannot be read and is not saved: look at the steps marked so.";
const TURNED_AWAY =
  "the workroom answers, but does not take them. Is the shade still in its job?";
const NOT_KEPT =
  "This browser keeps nothing: what is not saved is lost when the page is left. Stay on it.";

/** Wires the bench card, where the page has one. */
export function startBench(): void {
  const desk = document.querySelector<HTMLElement>("[data-bench]");
  if (desk) new Bench(desk).start();
}

class Bench {
  private readonly box: BenchBox;
  private sending = false;
  private away = false; // the workroom did not answer, and something still waits
  private turnedAway = false; // the workroom answers, and does not take what waits
  private keeps = true; // this browser keeps letters over a sleep
  private readonly refused = new Set<string>(); // steps whose typing could not be read
  private lastSaved = ""; // the step whose result stands in the head
  private justSaved = ""; // the step saved last: its answer may lead on

  constructor(private readonly desk: HTMLElement) {
    this.box = new BenchBox(desk.dataset.bench ?? "");
  }

  start(): void {
    document.addEventListener("submit", (event) => this.submitted(event));
    document.addEventListener("click", (event) => this.stepped(event));
    document.addEventListener("input", (event) => this.typed(event.target as Element));
    document.addEventListener("visibilitychange", () => this.woke());
    window.addEventListener("popstate", () => this.show(this.asked()));
    window.addEventListener("online", () => void this.sendAll());
    window.setInterval(() => void this.sendAll(), RETRY_MS);
    this.dress();
    void this.sendAll();
  }

  /** A form of the card is not sent by the browser: its letter goes through the box. */
  private submitted(event: SubmitEvent): void {
    const form = event.target as HTMLFormElement;
    const isUndo = form.matches("[data-bench-undo]");
    if (!isUndo && !form.matches("[data-bench-form]")) return;
    event.preventDefault();
    const letter = this.letter(form, event.submitter);
    this.justSaved = letter.step ?? "";
    this.refused.delete(this.justSaved);
    this.keeps = this.box.put(letter);
    if (!isUndo) dropDraft(form);
    this.dress();
    void this.sendAll().then(() => this.goOn(letter));
  }

  private letter(form: HTMLFormElement, pressed: HTMLElement | null): Letter {
    const entries = Array.from(new FormData(form)).map(([name, value]) => [name, String(value)]);
    const letter = Object.fromEntries(entries) as Letter;
    const button = pressed as HTMLButtonElement | null;
    if (button?.name) letter[button.name] = button.value;
    const session = this.head()?.dataset.session ?? "";
    if (letter.step === UNDO) return { ...this.undoing(letter, form), session };
    return { ...letter, key: freshKey(), session, noted_at: new Date().toISOString() };
  }

  /** What waits here is newer than all that the workroom has: one undo takes that back first. */
  private undoing(letter: Letter, form: HTMLFormElement): Letter {
    if (form.dataset.benchUndo !== "last") return letter;
    const gone = new Set(this.box.waiting.map((one) => one.undoes));
    const own = this.box.waiting.filter((one) => one.step !== UNDO && !gone.has(one.key));
    const undoes = own[own.length - 1]?.key ?? letter.undoes ?? "";
    return { ...letter, undoes, key: `undo-${undoes}` };
  }

  /** While the workroom is away the work goes on with the next step all the same. */
  private goOn(letter: Letter): void {
    const waits = this.box.waiting.some((one) => one.key === letter.key);
    if (!waits || letter.step === UNDO) return;
    this.justSaved = ""; // once it is sent its answer leads nobody back
    this.goTo(this.after(letter.step ?? ""));
  }

  private after(step: string): string {
    const ids = this.sections().map((one) => one.dataset.step ?? "");
    return ids.includes(step) ? (ids[ids.indexOf(step) + 1] ?? step) : this.shown();
  }

  /** Sends what waits, in order; the first that does not arrive keeps the others back. */
  private async sendAll(): Promise<void> {
    if (this.sending) return;
    this.sending = true;
    try {
      while (this.box.waiting.length > 0 && (await this.sendFirst())) continue;
    } finally {
      this.sending = false;
      this.dress();
    }
  }

  private async sendFirst(): Promise<boolean> {
    const letter = this.box.waiting[0];
    if (!letter) return false;
    const slow = window.setTimeout(() => this.lost(), SLOW_MS);
    const answer = await this.box.send(letter);
    window.clearTimeout(slow);
    const arrived = answer.kind === "taken" || answer.kind === "unread";
    this.away = !arrived || (this.away && this.box.waiting.length > 1);
    this.turnedAway = answer.kind === "turned away";
    if (!arrived) return false;
    this.box.drop(letter);
    if (answer.kind === "unread") this.keepRefused(letter);
    this.swap(answer.html, letter, answer.kind === "taken");
    return true;
  }

  private lost(): void {
    this.away = true;
    this.dress();
  }

  /** What could not be read stays typed, over a reload too. */
  private keepRefused(letter: Letter): void {
    const form = this.form(letter.step ?? "");
    if (form) refill(form, letter);
    if (form) keepDraft(form);
  }

  private swap(html: string, letter: Letter, taken: boolean): void {
    const shown = this.shown();
    this.lastSaved = letter.step ?? "";
    this.swapIn(html, letter.step);
    if (!taken) this.refused.add(letter.step ?? "");
    const led = letter.step === this.justSaved;
    const go = led && this.box.waiting.length === 0 ? this.head()?.dataset.go : shown;
    this.goTo(go || shown);
    this.dress();
    if (document.querySelector("[data-more]")) void this.refresh();
  }

  /** Swaps all but the steps whose typing must stay; the step that is shown stays shown. */
  private swapIn(html: string, answered?: string): void {
    const shown = this.shown();
    const typing = shown !== answered && hasDraftIn(this.form(shown));
    const stay = [...(typing ? [shown] : []), ...this.refused];
    swapParts(html, stay.map((step) => `bench step ${step}`));
    this.show(shown);
  }

  /** On waking the page asks how things stand: another tablet may have gone on. */
  private woke(): void {
    if (document.visibilityState !== "visible") return;
    void this.sendAll().then(() => this.refresh());
  }

  private async refresh(): Promise<void> {
    if (this.box.waiting.length > 0) return;
    const url = new URL(this.desk.dataset.bench ?? "", location.href);
    url.searchParams.set("parts", "bench");
    url.searchParams.set("session", this.head()?.dataset.session ?? "");
    url.searchParams.set("step", this.shown());
    url.searchParams.set("last", this.lastSaved);
    try {
      const response = await fetch(url);
      if (!response.ok) return;
      this.swapIn(await response.text());
      this.dress();
    } catch {
      // It is asked again at the next waking.
    }
  }

  private stepped(event: MouseEvent): void {
    const link = (event.target as Element).closest<HTMLElement>("[data-step-link]");
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    this.justSaved = ""; // whoever goes on by hand is led nowhere by an answer still to come
    this.goTo(link.dataset.stepLink ?? "", true);
  }

  private goTo(step: string, byHand = false): void {
    if (step === this.shown() && !byHand) return;
    const url = new URL(location.href);
    url.searchParams.set("step", step);
    url.searchParams.delete("last");
    history.pushState(history.state, "", url);
    this.show(step);
    this.section(step)?.querySelector("h2")?.focus({ preventScroll: true });
    this.section(step)?.scrollIntoView({ block: "start" });
    this.dress();
  }

  private show(step: string): void {
    if (!this.section(step)) return;
    for (const one of this.sections()) one.hidden = one.dataset.step !== step;
    for (const link of Array.from(document.querySelectorAll(".bench-list [data-step-link]"))) {
      const isShown = link.getAttribute("data-step-link") === step;
      if (isShown) link.setAttribute("aria-current", "step");
      else link.removeAttribute("aria-current");
    }
  }

  private typed(target: Element): void {
    const form = target.closest<HTMLFormElement>("[data-bench-form]");
    if (!form) return;
    if (target.matches("[data-by]")) this.sign(target as HTMLInputElement);
    else keepDraft(form);
    this.mark();
  }

  /** A name typed once stands in every step. */
  private sign(typed: HTMLInputElement): void {
    for (const field of Array.from(document.querySelectorAll<HTMLInputElement>("[data-by]"))) {
      if (field !== typed) field.value = typed.value;
    }
  }

  /** Shows on the page what waits here, and the turns that were noted meanwhile. */
  private dress(): void {
    for (const one of this.sections()) {
      const form = this.form(one.dataset.step ?? "");
      if (form) bringBackDraft(form);
    }
    this.mark();
    this.fillTurns();
    this.tell();
  }

  /** Marks the steps that wait here, and in the list those that hold what was typed only. */
  private mark(): void {
    const waiting = this.away ? this.box.waiting : [];
    const steps = new Set(waiting.map((letter) => letter.step));
    for (const mark of Array.from(document.querySelectorAll<HTMLElement>("[data-kept-here]"))) {
      const step = mark.dataset.keptHere ?? "";
      const typed = mark.matches(".bench-list *") && hasDraftIn(this.form(step));
      mark.hidden = !steps.has(step) && !typed;
      if (mark.matches(".bench-list *")) mark.textContent = steps.has(step) ? WAITS : TYPED;
    }
  }

  /** Turns noted while the workroom is away go for the steps after them. */
  private fillTurns(): void {
    const counted = this.box.waiting.filter((letter) => letter.turns);
    const turns = counted[counted.length - 1]?.turns;
    for (const field of Array.from(
      document.querySelectorAll<HTMLInputElement>("[data-turns-now]"),
    )) {
      if (turns && field.value === field.defaultValue) field.value = turns;
    }
  }

  private tell(): void {
    const place = document.querySelector<HTMLElement>("[data-outbox]");
    const words = this.words();
    if (place) place.dataset.waiting = String(this.box.waiting.length);
    if (!place || place.dataset.told === words) return;
    place.dataset.told = words;
    place.textContent = words;
    if (words && this.box.waiting.length > 0) place.append(this.retryButton());
  }

  private words(): string {
    const count = this.box.waiting.length;
    if (count === 0 || !this.away) return this.keeps ? this.unread() : NOT_KEPT;
    const taps = count === 1 ? "1 entry is" : `${count} entries are`;
    const where = this.keeps ? "kept on this tablet" : "on this page alone, which must stay open,";
    const why = this.turnedAway ? TURNED_AWAY : "the workroom does not answer. Go on working.";
    return `${taps} ${where} and not saved yet: ${why}`;
  }

  /** What could not be read is shown at its step; elsewhere it is told of. */
  private unread(): string {
    const elsewhere = Array.from(this.refused).filter((step) => step !== this.shown());
    return elsewhere.length > 0 ? UNREAD : "";
  }

  private retryButton(): HTMLElement {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = "Try now";
    button.addEventListener("click", () => void this.sendAll());
    return button;
  }

  private head(): HTMLElement | null {
    return document.querySelector<HTMLElement>(".bench-head");
  }

  private sections(): HTMLElement[] {
    return Array.from(document.querySelectorAll<HTMLElement>("[data-step]"));
  }

  private section(step: string): HTMLElement | undefined {
    return this.sections().find((one) => one.dataset.step === step);
  }

  private form(step: string): HTMLFormElement | null {
    return this.section(step)?.querySelector<HTMLFormElement>("[data-bench-form]") ?? null;
  }

  private shown(): string {
    return this.sections().find((one) => !one.hidden)?.dataset.step ?? "";
  }

  private asked(): string {
    return new URL(location.href).searchParams.get("step") ?? this.shown();
  }
}

function hasDraftIn(form: HTMLFormElement | null): boolean {
  return form !== null && hasDraft(form);
}

function refill(form: HTMLFormElement, letter: Letter): void {
  for (const entry of Array.from(form.querySelectorAll<HTMLInputElement>("input[name]"))) {
    const text = letter[entry.name];
    if (entry.type === "hidden" || text === undefined) continue;
    if (entry.type === "radio") entry.checked = entry.value === text;
    else entry.value = text;
  }
}
