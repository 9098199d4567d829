/**
 * Keeps every tap at the bench until the workroom has it, and sends them in order.
 *
 * Each letter carries a key of its own: sent twice, it is kept once. Plain HTTP on a shop's
 * network has no service worker, so the letters wait in this tablet's browser.
 */

/** What was typed in one step, as its form would send it. */
export type Letter = Record<string, string>;

/** What became of a letter: taken or unread with the page that says so, turned away, or lost. */
export type Answer =
  | { kind: "taken" | "unread"; html: string }
  | { kind: "turned away" }
  | { kind: "lost" };

const LONGEST_WAIT_MS = 8000;
const UNREAD = 422; // it arrived, and something in it cannot be read
const FIRST_TROUBLE_OF_ITS_OWN = 500; // below, the workroom answers and does not want it

/** The letters of one bench card that wait in this browser. */
export class BenchBox {
  private inMemory: Letter[] | undefined; // where this browser keeps nothing

  constructor(
    private readonly address: string,
    private readonly name = `foldwright bench ${address}`,
  ) {}

  /** Gives what waits, the oldest first; another page of this browser may have added to it. */
  get waiting(): readonly Letter[] {
    return this.stored();
  }

  /** Puts a letter at the end; tells whether this browser will still have it after a sleep. */
  put(letter: Letter): boolean {
    return this.store([...this.stored(), letter]);
  }

  /** Takes a letter out once the workroom has it. */
  drop(letter: Letter): void {
    this.store(this.stored().filter((one) => one.key !== letter.key));
  }

  /** Sends one letter; a workroom that does not answer as it should leaves it here. */
  async send(letter: Letter): Promise<Answer> {
    const patience = new AbortController();
    const alarm = window.setTimeout(() => patience.abort(), LONGEST_WAIT_MS);
    try {
      const body = new URLSearchParams({ ...letter, parts: "bench" });
      const request = { method: "POST", body, signal: patience.signal };
      const response = await fetch(this.address, request);
      const html = await response.text();
      if (response.ok) return { kind: "taken", html };
      if (response.status === UNREAD) return { kind: "unread", html };
      return { kind: response.status < FIRST_TROUBLE_OF_ITS_OWN ? "turned away" : "lost" };
    } catch {
      return { kind: "lost" };
    } finally {
      window.clearTimeout(alarm);
    }
  }

  private stored(): Letter[] {
    if (this.inMemory) return this.inMemory;
    try {
      return JSON.parse(localStorage.getItem(this.name) ?? "[]") as Letter[];
    } catch {
      return [];
    }
  }

  private store(letters: Letter[]): boolean {
    try {
      localStorage.setItem(this.name, JSON.stringify(letters));
      this.inMemory = undefined;
    } catch {
      this.inMemory = letters;
    }
    return this.inMemory === undefined;
  }
}

/** Makes a key that no other tap has; plain HTTP has no crypto.randomUUID. */
export function freshKey(): string {
  const words = crypto.getRandomValues(new Uint32Array(4));
  return Array.from(words, (word) => word.toString(16).padStart(8, "0")).join("");
}
