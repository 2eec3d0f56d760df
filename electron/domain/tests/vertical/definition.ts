import type { TestDefinition } from "../definition.ts";
import { verticalFigures, verticalInEnglish } from "./figures.ts";
import { keyedVertical } from "./keyed.ts";
import { liveVertical, type VerticalKept, type VerticalLane, type VerticalTap } from "./live.ts";
import { type VerticalAttempt, type VerticalParameters, vertical } from "./protocol.ts";
import { verticalSheet } from "./sheet.ts";

type VerticalTest = TestDefinition<
  "vertical",
  VerticalParameters,
  VerticalAttempt,
  VerticalTap,
  VerticalKept,
  VerticalLane
>;

/** The vertical leap. */
export const verticalTest: VerticalTest = Object.freeze({
  protocol: vertical,
  live: liveVertical,
  cues: () => [],
  keyed: keyedVertical,
  sheet: verticalSheet,
  figures: verticalFigures,
  english: verticalInEnglish,
});
