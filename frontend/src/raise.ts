/** Raises the shade: by the range input, by the step buttons, or by pulling its bar on the drawing. */

import { refresh } from "./refresh";

/** Wires the raise handle, where the page has one. */
export function startRaise(): void {
  const handle = document.querySelector<HTMLInputElement>("input[data-raise]");
  const stage = document.querySelector<HTMLElement>("[data-stage]");
  if (!handle || !stage) return;
  handle.addEventListener("input", () => raised(handle));
  handle.addEventListener("change", () => settled(handle));
  document.addEventListener("click", (event) => stepped(event, handle));
  stage.addEventListener("pointerdown", (event) => startPull(event, stage, handle));
}

function raised(handle: HTMLInputElement): void {
  handle.setAttribute("aria-valuetext", `raised ${Math.round(Number(handle.value) * 100)} %`);
  refresh("drawing");
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

/** The grip is drawn along the bottom edge; its height on the screen is the travel's measure. */
function startPull(event: PointerEvent, stage: HTMLElement, handle: HTMLInputElement): void {
  const grip = (event.target as Element).closest<SVGElement>("[data-grip]");
  if (!grip || !event.isPrimary || event.button !== 0) return;
  event.preventDefault();
  const travel = travelPixels(grip);
  const from = { y: event.clientY, share: Number(handle.value) };
  const stop = pull(stage, event.pointerId, (y) => {
    raiseTo(handle, from.share + (from.y - y) / travel);
  });
  stop.addEventListener("abort", () => settled(handle));
}

function travelPixels(grip: SVGElement): number {
  const drawing = grip.ownerSVGElement;
  if (!drawing) return 1;
  const scale = drawing.getScreenCTM()?.d ?? 1;
  return Math.max(1, Number(grip.dataset.grip) * Math.abs(scale));
}

/** Follows one pointer until it is let go; the stage outlives the drawings swapped within it. */
function pull(stage: HTMLElement, pointer: number, follow: (y: number) => void): AbortSignal {
  const stop = new AbortController();
  const until = { signal: stop.signal };
  stage.setPointerCapture(pointer);
  stage.addEventListener("pointermove", (event) => follow(event.clientY), until);
  stage.addEventListener("pointerup", () => stop.abort(), until);
  stage.addEventListener("pointercancel", () => stop.abort(), until);
  return stop.signal;
}
