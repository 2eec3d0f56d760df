import type { LengthUnit, TestCode } from "../protocols/protocol.ts";
import type { AttemptOf } from "../protocols/registry.ts";
import { type Sentence, sentence } from "../words.ts";
import { type Reading, readingOf, type Typed } from "./reading.ts";

/** What was typed, as attempts of the test, or what is wrong with which field. */
export type Keyed =
  | { readonly seen: readonly unknown[] }
  | { readonly errors: Readonly<Record<string, Sentence>> };

/** How many touches of the leap are keyed together at most; each has a field of its own. */
export const touchNames = ["touch1", "touch2", "touch3"] as const;

type Read<Code extends TestCode> = (reading: Reading, lengths: LengthUnit) => AttemptOf<Code>[];

/** One reader a test; the names of the fields are those of the attempt wherever one field is one part of it. */
const readers: { readonly [Code in TestCode]: Read<Code> } = {
  "push-up": (reading) => [
    { how: "tally", reps: reading.count("reps"), offAtEnd: reading.count("offAtEnd") },
  ],
  agility: (reading) => [
    {
      direction: reading.text("direction") === "ccw" ? "ccw" : "cw",
      laps: reading.count("laps"),
      extra: reading.count("extra"),
      touches: reading.count("touches"),
    },
  ],
  vertical(reading, lengths) {
    const standingReach = reading.length("standingReach", lengths);
    const mass = reading.isEmpty("bodyMass") ? {} : { bodyMass: reading.mass("bodyMass", lengths) };
    const used = touchNames.filter((name) => !reading.isEmpty(name));
    // Without any touch the first is asked for.
    return (used.length === 0 ? [touchNames[0]] : used).map((name) => ({
      standingReach,
      touchReach: reading.length(name, lengths),
      ...mass,
    }));
  },
  core: (reading) => [{ held: reading.time("time") }],
  endurance: (reading) =>
    reading.text("finished") === "no"
      ? [{ finished: false, roundsDone: reading.count("roundsDone"), repsDone: reading.count("repsDone") }]
      : [{ finished: true, time: reading.time("time") }],
};

/** Limits of single fields that the attempt's schema has too, said here in words that fit the field. */
function fieldLimits(test: TestCode, reading: Reading): Record<string, Sentence> {
  if (test === "agility" && !reading.isEmpty("extra") && Number(reading.text("extra")) > 3) {
    return { extra: sentence("keyed.extra") };
  }
  if (test === "push-up" && Number(reading.text("offAtEnd")) > 3)
    return { offAtEnd: sentence("keyed.offAtEnd") };
  return {};
}

/** Reads the fields of a test. Whether the attempts can be believed is the protocol's to say. */
export function readKeyed(test: TestCode, typed: Typed, lengths: LengthUnit): Keyed {
  const reading = readingOf(typed);
  const seen = readers[test](reading, lengths);
  const errors = { ...fieldLimits(test, reading), ...reading.errors };
  return Object.keys(errors).length > 0 ? { errors } : { seen };
}
