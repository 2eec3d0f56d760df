import { differsFromLast, type ErrorParts, startingTypicalErrors } from "../statistics/change.ts";
import { type Sentence, sentence } from "../words.ts";
import { ask, fine } from "./believable.ts";
import type { LengthUnit, Mark, Plausibility, Written } from "./protocol.ts";
import { protocolOf, type TestCode } from "./registry.ts";

/** Formats any mark for people; an incomplete one has no number, only a note. */
export function writeMark(code: TestCode, mark: Mark, lengths: LengthUnit): Written {
  switch (mark.state) {
    case "complete":
      return { ...protocolOf(code).write(mark.value, lengths), ...fewerTrials(mark) };
    case "incomplete":
      return { number: "", unit: "", note: missingOf(code, mark.missing) };
    case "unfinished":
      return {
        number: "",
        unit: "",
        note: sentence("marks.unfinished", { rounds: mark.rounds, reps: mark.reps }),
      };
  }
}

/** Tells how few trials a mark is the best of: a better one may have been to come. */
function fewerTrials({ trials }: Extract<Mark, { state: "complete" }>): Pick<Written, "note"> {
  return trials === undefined ? {} : { note: sentence("marks.trials", { ...trials }) };
}

/** Returns the sentence about a mark's missing part; `missing` names the slots, in the protocol's order. */
export function missingOf(code: TestCode, missing: readonly string[]): Sentence {
  return sentence(`test.${code}.missing.${missing.join("-")}`);
}

/** Asks when a mark differs by over four typical errors from the athlete's own last (both in grains). */
export function againstLast(
  code: TestCode,
  last: number,
  value: number,
  lengths: LengthUnit,
  error: ErrorParts = startingTypicalErrors[code],
): Plausibility {
  if (!differsFromLast(code, last, value, error)) return fine;
  const { write } = protocolOf(code);
  const values = { last: write(last, lengths).number, value: write(value, lengths).number };
  return ask(sentence("plausibility.differsFromLast", values));
}
