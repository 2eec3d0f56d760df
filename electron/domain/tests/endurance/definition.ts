import type { TestDefinition } from "../definition.ts";
import { enduranceCues } from "./cues.ts";
import { enduranceFigures, enduranceInEnglish } from "./figures.ts";
import { keyedEndurance } from "./keyed.ts";
import { type EnduranceKept, type EnduranceLane, type EnduranceTap, liveEndurance } from "./live.ts";
import { type EnduranceAttempt, type EnduranceParameters, endurance, repsDone } from "./protocol.ts";
import { enduranceSheet } from "./sheet.ts";

type EnduranceTest = TestDefinition<
  "endurance",
  EnduranceParameters,
  EnduranceAttempt,
  EnduranceTap,
  EnduranceKept,
  EnduranceLane
>;

/** The circuit. */
export const enduranceTest: EnduranceTest = Object.freeze({
  protocol: endurance,
  live: liveEndurance,
  cues: enduranceCues,
  keyed: keyedEndurance,
  sheet: enduranceSheet,
  figures: enduranceFigures,
  english: enduranceInEnglish,
  repsDone,
});
