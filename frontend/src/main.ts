/** Starts what this page has: each part looks for its own elements and does nothing without them. */

import { startBench } from "./bench";
import { startCutting } from "./cutting";
import { startKeypad } from "./keypad";
import { startOutbox } from "./outbox";
import { startRaise } from "./raise";
import { startShadeForm } from "./shadeform";
import { startWhy } from "./why";

document.documentElement.classList.add("live");
startShadeForm();
startOutbox();
startRaise();
startWhy();
startKeypad();
startBench();
startCutting();
