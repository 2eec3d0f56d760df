import type { TestDefinition } from "../definition.ts";
import { agilityCues } from "./cues.ts";
import { agilityFigures, agilityInEnglish } from "./figures.ts";
import { keyedAgility } from "./keyed.ts";
import { type AgilityKept, type AgilityLane, type AgilityTap, liveAgility } from "./live.ts";
import { type AgilityAttempt, type AgilityParameters, agility } from "./protocol.ts";
import { agilitySheet } from "./sheet.ts";

type AgilityTest = TestDefinition<
  "agility",
  AgilityParameters,
  AgilityAttempt,
  AgilityTap,
  AgilityKept,
  AgilityLane
>;

/** The quadrant jump. */
export const agilityTest: AgilityTest = Object.freeze({
  protocol: agility,
  live: liveAgility,
  cues: agilityCues,
  keyed: keyedAgility,
  sheet: agilitySheet,
  figures: agilityFigures,
  english: agilityInEnglish,
});
