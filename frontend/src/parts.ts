/** Swaps the parts of the page that the server has drawn anew. */

const PART = "data-part";

/** Told to the document once parts have been swapped. */
export const SWAPPED = "swapped";

/** Puts every part found in `html` in the place of the part with the same name, some left out. */
export function swapParts(html: string, but: readonly string[] = []): void {
  const fresh = new DOMParser().parseFromString(html, "text/html");
  const focused = document.activeElement;
  const place = focused?.getBoundingClientRect().top;
  for (const part of Array.from(fresh.querySelectorAll(`[${PART}]`))) {
    const name = part.getAttribute(PART) ?? "";
    if (but.includes(name)) continue;
    const old = document.querySelector(`[${PART}="${CSS.escape(name)}"]`);
    if (old) keepOpen(old, part);
    old?.replaceWith(part);
  }
  keepFocus(focused?.id);
  if (focused?.isConnected && place !== undefined) keepPlace(focused, place);
  document.dispatchEvent(new Event(SWAPPED));
}

/** What lies above may have grown: the field that is typed in stays where it was on the screen. */
function keepPlace(focused: Element, place: number): void {
  if (focused !== document.body) window.scrollBy(0, focused.getBoundingClientRect().top - place);
}

/** What a person has opened stays open. */
function keepOpen(old: Element, fresh: Element): void {
  for (const opened of Array.from(old.querySelectorAll("details[data-keep][open]"))) {
    const name = CSS.escape(opened.getAttribute("data-keep") ?? "");
    fresh.querySelector(`details[data-keep="${name}"]`)?.setAttribute("open", "");
  }
}

/** A swapped part may have held the focus: hand it to the element of the same id. */
function keepFocus(id: string | undefined): void {
  if (id && document.activeElement === document.body) {
    document.getElementById(id)?.focus({ preventScroll: true });
  }
}
