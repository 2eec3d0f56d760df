import type { TestDefinition } from "../definition.ts";
import { coreCues } from "./cues.ts";
import { coreFigures, coreInEnglish } from "./figures.ts";
import { keyedCore } from "./keyed.ts";
import { type CoreKept, type CoreLane, type CoreTap, liveCore } from "./live.ts";
import { type CoreAttempt, type CoreParameters, core } from "./protocol.ts";
import { coreSheet } from "./sheet.ts";

type CoreTest = TestDefinition<"core", CoreParameters, CoreAttempt, CoreTap, CoreKept, CoreLane>;

/** The staged plank. */
export const coreTest: CoreTest = Object.freeze({
  protocol: core,
  live: liveCore,
  cues: coreCues,
  keyed: keyedCore,
  sheet: coreSheet,
  figures: coreFigures,
  english: coreInEnglish,
});
