import type { LengthUnit, TestCode } from "../protocols/protocol.ts";
import { type AttemptOf, protocols } from "../protocols/registry.ts";
import { formatLength, formatTime, parseLength } from "../units.ts";
import type { Typed } from "./reading.ts";

/** An attempt as the text that would be typed for it, and the unit of its lengths. */
export interface Retyped {
  readonly typed: Typed;
  readonly lengths: LengthUnit;
}

/** What to put into the fields to correct an attempt: reading it again gives the same attempt. */
export function retype(test: TestCode, seen: unknown, lengths: LengthUnit): Retyped {
  switch (test) {
    case "push-up":
      return { typed: pushUp(protocols["push-up"].attempt.parse(seen)), lengths };
    case "agility": {
      const { direction, laps, extra, touches } = protocols.agility.attempt.parse(seen);
      return { typed: { direction, laps: `${laps}`, extra: `${extra}`, touches: `${touches}` }, lengths };
    }
    case "vertical":
      return vertical(protocols.vertical.attempt.parse(seen), lengths);
    case "core":
      return { typed: { time: time(protocols.core.attempt.parse(seen).held) }, lengths };
    case "endurance":
      return { typed: endurance(protocols.endurance.attempt.parse(seen)), lengths };
  }
}

/** Cadences as the tally that scores the same: up to the last one on the beat, and none off after it. */
function pushUp(seen: AttemptOf<"push-up">): Typed {
  if (seen.how === "tally") return { reps: `${seen.reps}`, offAtEnd: `${seen.offAtEnd}` };
  const reps = seen.cadences.length;
  const offAtEnd = reps - (seen.cadences.lastIndexOf(".") + 1);
  return { reps: `${reps}`, offAtEnd: `${offAtEnd}` };
}

function vertical(seen: AttemptOf<"vertical">, preferred: LengthUnit): Retyped {
  const { standingReach, touchReach, bodyMass } = seen;
  const other = preferred === "cm" ? "in" : "cm";
  const readable = (unit: LengthUnit) =>
    [standingReach, touchReach].every((mm) => {
      const read = parseLength(formatLength(mm, unit), unit);
      return "mm" in read && read.mm === mm;
    });
  // A reading in inches is rarely a half centimetre, and the other way round.
  const lengths = !readable(preferred) && readable(other) ? other : preferred;
  const mass = bodyMass === undefined ? {} : { bodyMass: massText(bodyMass, lengths) };
  const [reach, touch] = [formatLength(standingReach, lengths), formatLength(touchReach, lengths)];
  return { typed: { standingReach: reach, touch1: touch, ...mass }, lengths };
}

/** Kilograms to the gram; pounds to the thousandth, which is finer than a gram. */
function massText(grams: number, lengths: LengthUnit): string {
  return lengths === "cm" ? `${grams / 1000}` : `${Math.round(grams / 0.45359237) / 1000}`;
}

function time(ms: number): string {
  const fraction = ms % 1000;
  const decimals = fraction === 0 ? "" : `.${String(fraction).padStart(3, "0").replace(/0+$/, "")}`;
  return formatTime(ms, false) + decimals;
}

function endurance(seen: AttemptOf<"endurance">): Typed {
  if (seen.finished) return { finished: "yes", time: time(seen.time) };
  return { finished: "no", roundsDone: `${seen.roundsDone}`, repsDone: `${seen.repsDone}` };
}
