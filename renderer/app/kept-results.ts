import type { Answers } from "./answers.ts";
import { dropCopy, holdCopy } from "./device-keep.ts";
import { channel, type KeptEntry } from "./kept-entries.ts";

type Heat = NonNullable<Answers["heat"]["view"]["heat"]>;
type LaneResult = Heat["lane"][number]["entered"][number];

/**
 * Keeps the results of this device's own heat as if they had been typed here: a table that came back without them gets them,
 * though not the heat. What was undone is forgotten; a correction is kept by whoever made it.
 */
export function keepResults({ heatId, lane }: Heat): void {
  for (const { lane: number, entered } of lane) {
    for (const result of entered.filter(({ corrected }) => !corrected)) {
      // A result that was undone and came again is another attempt in the same place.
      const id = `${heatId} ${number} ${result.key}`;
      if (result.attempt.void === null) holdCopy(channel, entryOf(id, result));
      else dropCopy(channel, id);
    }
  }
}

function entryOf(id: string, { attempt }: LaneResult): KeptEntry {
  const { attemptId, who, test, variant, seen, by } = attempt;
  const entry = { athleteId: who.athleteId, test, variant, by, note: "", sure: true };
  return { what: "enter", id, bib: who.bib, entry: { ...entry, attempts: [{ id: attemptId, seen }] } };
}
