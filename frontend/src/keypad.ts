/** The key pad with fraction keys, for a tablet: it types into the length field last touched. */

const LENGTHS = "input[data-length]";

/** Wires the key pad, where the page has one. */
export function startKeypad(): void {
  const pad = document.querySelector<HTMLElement>("[data-keypad]");
  if (!pad) return;
  const desk = new Keypad(pad);
  document.addEventListener("pointerup", (event) => desk.touched(event));
  document.addEventListener("focusin", (event) => desk.focused(event.target as Element));
  document.addEventListener("click", (event) => desk.toggled(event.target as Element));
  pad.addEventListener("pointerdown", (event) => event.preventDefault());
  pad.addEventListener("click", (event) => desk.pressed(event.target as Element));
}

class Keypad {
  private field: HTMLInputElement | null = null;

  constructor(private readonly pad: HTMLElement) {}

  /** A finger on a length field opens the pad; a mouse or a key never does. */
  touched(event: PointerEvent): void {
    const field = (event.target as Element).closest<HTMLInputElement>(LENGTHS);
    if (field && event.pointerType === "touch") this.open(field);
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
    const field = this.field ?? document.querySelector<HTMLInputElement>(LENGTHS);
    if (this.pad.hidden && field) this.open(field);
    else this.close();
  }

  /** One key of the pad. */
  pressed(target: Element): void {
    const key = target.closest<HTMLButtonElement>("button[data-key]")?.dataset.key;
    if (!key || !this.field) return;
    if (key === "close") this.close();
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

  private next(field: HTMLInputElement): void {
    const fields = Array.from(document.querySelectorAll<HTMLInputElement>(LENGTHS));
    const visible = fields.filter((one) => one.offsetParent !== null);
    const following = visible[visible.indexOf(field) + 1] ?? visible[0];
    following?.focus();
    following?.scrollIntoView({ block: "center" });
  }

  private type(field: HTMLInputElement, key: string): void {
    field.value = key === "back" ? field.value.slice(0, -1) : joined(field.value, key);
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }
}

/** A fraction stands one space behind the whole inches, and takes the place of another fraction. */
export function joined(text: string, key: string): string {
  if (key === "clear") return "";
  if (!key.includes("/")) return text + key;
  const whole = text.replace(/\s*\d+\/\d*$/, "").trimEnd();
  return whole ? `${whole} ${key}` : key;
}
