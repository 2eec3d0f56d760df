import type { TestDefinition } from "../definition.ts";
import { pushUpCues } from "./cues.ts";
import { pushUpFigures, pushUpInEnglish } from "./figures.ts";
import { keyedPushUp } from "./keyed.ts";
import { livePushUp, type PushUpKept, type PushUpLane, type PushUpTap } from "./live.ts";
import { type PushUpAttempt, type PushUpParameters, pushUp } from "./protocol.ts";
import { pushUpSheet } from "./sheet.ts";

type PushUpTest = TestDefinition<
  "push-up",
  PushUpParameters,
  PushUpAttempt,
  PushUpTap,
  PushUpKept,
  PushUpLane
>;

/** The cadence push-up. */
export const pushUpTest: PushUpTest = Object.freeze({
  protocol: pushUp,
  live: livePushUp,
  cues: pushUpCues,
  keyed: keyedPushUp,
  sheet: pushUpSheet,
  figures: pushUpFigures,
  english: pushUpInEnglish,
  judged: (seen: PushUpAttempt) => (seen.how === "cadences" ? seen.cadences : null),
});
