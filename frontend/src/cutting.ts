/** Shows better cut plans as they are found, until the search has ended. */

import { swapParts } from "./parts";

const LOOK_AGAIN_MS = 1500;

/** Starts looking where the page has a search that runs. */
export function startCutting(): void {
  const page = document.querySelector<HTMLElement>("[data-cutting]");
  if (page && isRunning()) lookLater(page.dataset.cutting ?? "");
}

function isRunning(): boolean {
  return document.querySelector("[data-part=search][data-running]") !== null;
}

function lookLater(url: string): void {
  window.setTimeout(() => void look(url), LOOK_AGAIN_MS);
}

async function look(url: string): Promise<void> {
  try {
    const response = await fetch(url);
    if (response.ok) swapParts(await response.text());
  } catch {
    // the workroom does not answer just now: what stands on the page is still right
  }
  if (isRunning()) lookLater(url);
}
