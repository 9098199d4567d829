/** The key pad with fraction keys, for a tablet: it types into the length field last touched. */

const LENGTHS = "input[data-length]";

/** Wires the key pad, where the page has one. */
export function startKeypad(): void {
  const pad = document.querySelector<HTMLElement>("[data-keypad]");
  if (!pad) return;
  const desk = new Keypad(pad);
  document.addEventListener("pointerdown", (event) => desk.reached(event));
  document.addEventListener("click", (event) => desk.touched(event.target as Element));
  document.addEventListener("focusin", (event) => desk.focused(event.target as Element));
  document.addEventListener("click", (event) => desk.toggled(event.target as Element));
  pad.addEventListener("pointerdown", (event) => event.preventDefault());
  pad.addEventListener("click", (event) => desk.pressed(event.target as Element));
}

class Keypad {
  private field: HTMLInputElement | null = null;
  private byFinger = false;
  private letters = false; // the person asked for the tablet's own keyboard

  constructor(private readonly pad: HTMLElement) {}

  /** Before a finger lands on a length field, the tablet's own keyboard is told to stay away. */
  reached(event: PointerEvent): void {
    this.byFinger = event.pointerType === "touch";
    const field = (event.target as Element).closest<HTMLInputElement>(LENGTHS);
    if (field && this.byFinger && !this.letters) field.setAttribute("inputmode", "none");
  }

  /** A finger on a length field opens the pad; a mouse or a key never does. */
  touched(target: Element): void {
    const field = target.closest<HTMLInputElement>(LENGTHS);
    if (field && this.byFinger && !this.letters) this.open(field);
  }

  /** While the pad is open it follows the focus from field to field. */
  focused(target: Element): void {
    const field = target.closest<HTMLInputElement>(LENGTHS);
    if (field) this.follow(field);
    else if (!this.pad.contains(target)) this.close();
  }

  /** The button in the form opens and closes the pad for any pointer or key. */
  toggled(target: Element): void {
    if (!target.closest("[data-keypad-switch]")) return;
    const shown = visibleLengths();
    const field = shown.find((one) => one === this.field) ?? shown[0];
    this.letters = false;
    if (this.pad.hidden && field) this.open(field);
    else this.close();
  }

  /** One key of the pad. */
  pressed(target: Element): void {
    const key = target.closest<HTMLButtonElement>("button[data-key]")?.dataset.key;
    if (!key || !this.field) return;
    if (key === "close") this.close();
    else if (key === "letters") this.toLetters(this.field);
    else if (key === "next") this.next(this.field);
    else this.type(this.field, key);
  }

  private open(field: HTMLInputElement): void {
    this.pad.hidden = false;
    document.body.classList.add("with-keypad");
    this.follow(field);
    field.focus();
    field.scrollIntoView({ block: "center" });
  }

  private follow(field: HTMLInputElement): void {
    this.field?.removeAttribute("inputmode");
    this.field = field;
    if (this.pad.hidden) return;
    field.setAttribute("inputmode", "none");
    const name = this.pad.querySelector("[data-keypad-field]");
    if (name) name.textContent = field.labels?.[0]?.textContent ?? "";
  }

  private close(): void {
    this.field?.removeAttribute("inputmode");
    this.pad.hidden = true;
    document.body.classList.remove("with-keypad");
  }

  private toLetters(field: HTMLInputElement): void {
    this.letters = true;
    this.close();
    field.blur();
    field.focus();
  }

  private next(field: HTMLInputElement): void {
    const visible = visibleLengths();
    const following = visible[visible.indexOf(field) + 1] ?? visible[0];
    following?.focus();
    following?.scrollIntoView({ block: "center" });
  }

  private type(field: HTMLInputElement, key: string): void {
    field.value = key === "back" ? field.value.slice(0, -1) : joined(field.value, key);
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }
}

function visibleLengths(): HTMLInputElement[] {
  const fields = Array.from(document.querySelectorAll<HTMLInputElement>(LENGTHS));
  return fields.filter((one) => one.offsetParent !== null);
}

/** A fraction stands one space behind the whole inches, and takes the place of another fraction. */
export function joined(text: string, key: string): string {
  if (key === "clear") return "";
  if (!key.includes("/")) return text + key;
  const whole = text.replace(/\s*\d+\/\d*$/, "").trimEnd();
  return whole ? `${whole} ${key}` : key;
}
