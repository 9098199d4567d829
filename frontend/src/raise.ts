/** Raises the shade: by the range input, by the step buttons, or by pulling its bar on the drawing. */

import { SWAPPED } from "./parts";
import { refresh } from "./refresh";

/** Wires the raise handle, where the page has one. */
export function startRaise(): void {
  const handle = document.querySelector<HTMLInputElement>("input[data-raise]");
  const pull = document.querySelector<HTMLElement>("[data-pull]");
  if (!handle || !pull) return;
  handle.addEventListener("input", () => raised(handle));
  handle.addEventListener("change", () => settled(handle));
  document.addEventListener("click", (event) => stepped(event, handle));
  document.addEventListener("click", (event) => played(event, handle));
  pull.addEventListener("pointerdown", (event) => startPull(event, pull, handle));
  document.addEventListener(SWAPPED, () => layOverGrip(pull));
  window.addEventListener("resize", () => layOverGrip(pull));
  layOverGrip(pull);
}

function raised(handle: HTMLInputElement): void {
  handle.setAttribute("aria-valuetext", words(handle));
  refresh("drawing");
}

/** The handle raises the shade, or moves through the seconds of a rise. */
function words(handle: HTMLInputElement): string {
  const seconds = Number(handle.dataset.raise) * Number(handle.value);
  if (handle.dataset.raise) return `${seconds.toFixed(2)} s`;
  return `raised ${Math.round(Number(handle.value) * 100)} %`;
}

/** Lets the shade rise as fast as it would. */
function played(event: Event, handle: HTMLInputElement): void {
  if (!(event.target as Element).closest("[data-play]")) return;
  const longest = Number(handle.dataset.raise) * 1000;
  const began = performance.now();
  const step = (): void => {
    const share = Math.min(1, (performance.now() - began) / longest);
    raiseTo(handle, share);
    if (share < 1) window.requestAnimationFrame(step);
    else settled(handle);
  };
  step();
}

/** Once the handle rests, the address keeps the raise: a reload shows the same picture. */
function settled(handle: HTMLInputElement): void {
  const url = new URL(location.href);
  url.searchParams.set("raise", handle.value);
  history.replaceState(history.state, "", url);
}

function raiseTo(handle: HTMLInputElement, share: number): void {
  handle.value = String(Math.min(1, Math.max(0, share)));
  raised(handle);
}

function stepped(event: Event, handle: HTMLInputElement): void {
  const button = (event.target as Element).closest<HTMLButtonElement>("button[name=raise]");
  if (!button) return;
  event.preventDefault();
  raiseTo(handle, Number(button.value));
  settled(handle);
}

/**
 * What is pulled lies over the grip in the drawing, and outlives it: a drawing is swapped
 * many times during one pull, and a finger that loses what it touched lets go.
 */
function layOverGrip(pull: HTMLElement): void {
  const grip = document.querySelector<SVGGraphicsElement>("[data-grip]");
  const frame = pull.parentElement?.getBoundingClientRect();
  pull.hidden = !grip;
  if (!grip || !frame) return;
  const box = grip.getBoundingClientRect();
  pull.style.left = `${box.left - frame.left}px`;
  pull.style.top = `${box.top - frame.top}px`;
  pull.style.width = `${box.width}px`;
  pull.style.height = `${box.height}px`;
}

function startPull(event: PointerEvent, pull: HTMLElement, handle: HTMLInputElement): void {
  if (!event.isPrimary || event.button !== 0) return;
  event.preventDefault();
  const travel = travelPixels();
  const from = { y: event.clientY, share: Number(handle.value) };
  const stop = follow(pull, event.pointerId, (y) => {
    raiseTo(handle, from.share + (from.y - y) / travel);
  });
  stop.addEventListener("abort", () => settled(handle));
}

/** The height on the screen of the whole travel. */
function travelPixels(): number {
  const grip = document.querySelector<SVGGraphicsElement>("[data-grip]");
  const scale = grip?.getScreenCTM()?.d ?? 1;
  return Math.max(1, Number(grip?.dataset.grip) * scale);
}

/** Follows one pointer until it is let go. */
function follow(pull: HTMLElement, pointer: number, moved: (y: number) => void): AbortSignal {
  const stop = new AbortController();
  const until = { signal: stop.signal };
  pull.setPointerCapture(pointer);
  pull.addEventListener("pointermove", (event) => moved(event.clientY), until);
  pull.addEventListener("pointerup", () => stop.abort(), until);
  pull.addEventListener("pointercancel", () => stop.abort(), until);
  return stop.signal;
}
