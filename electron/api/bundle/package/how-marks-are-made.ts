import { type TestCode, testCodes } from "../../../domain/protocols/protocol.ts";
import { type ParametersOf, protocolOf, protocols } from "../../../domain/protocols/registry.ts";
import type { DayProtocol } from "../../../store/days.ts";
import { wrapped } from "./wrapped.ts";

/** One paragraph a test, with the parameters of that day, in the order of the tests. */
export function howMarksAreMade(held: readonly DayProtocol[]): string {
  return testCodes
    .flatMap((test) => {
      const parameters = held.find((protocol) => protocol.test === test)?.parameters;
      if (parameters === undefined) return [];
      const better = protocolOf(test).better === "higher" ? "Higher is better." : "**Lower is better.**";
      return [
        wrapped(`**\`${test}\`** (${protocolOf(test).grain.unit}). ${howOf(test, parameters)} ${better}`),
      ];
    })
    .join("\n\n");
}

function howOf(test: TestCode, parameters: unknown): string {
  switch (test) {
    case "push-up":
      return pushUp(protocols[test].parameters.parse(parameters));
    case "agility":
      return agility(protocols[test].parameters.parse(parameters));
    case "vertical":
      return vertical(protocols[test].parameters.parse(parameters));
    case "core":
      return core(protocols[test].parameters.parse(parameters));
    case "endurance":
      return endurance(protocols[test].parameters.parse(parameters));
  }
}

function pushUp({ bpm, beatsPerRep, missesToStop }: ParametersOf<"push-up">): string {
  const seconds = Number(((60 / bpm) * beatsPerRep).toFixed(3));
  return `Push-ups in time with a metronome, one every ${seconds} s. The test ends after ${missesToStop} off the beat in a
row or when the athlete stops. The mark is the ordinal of the last one on the beat: a slip recovered from counts, those
that lead to the end do not.`;
}

function agility({ crossSize, seconds, touchPenalty }: ParametersOf<"agility">): string {
  return `Jumps with feet together around the four quarters of a taped cross of ${crossSize} mm, for ${seconds} s, once
clockwise and once counter-clockwise. A trial is the landings less ${touchPenalty} for each touch of a line, never below 0;
the mark is the mean of both directions.`;
}

function vertical({ trials }: ParametersOf<"vertical">): string {
  return `Standing jump and touch: the highest touch less the standing reach, best of up to ${trials} trials. Not the same as
a height worked out from flight time.`;
}

function core({ cycle }: ParametersOf<"core">): string {
  return `A plank on forearms and feet whose stages grow harder (a foot lifted, an arm, then one of each) over ${cycle} s, and
then begin again. The mark is the whole seconds held, rounded down.`;
}

function endurance({ rounds, exercises }: ParametersOf<"endurance">): string {
  const round = exercises
    .map(({ exercise, count }) => `${count} ${exercise.replaceAll("-", " ")}`)
    .join(", ");
  return `${rounds} rounds of: ${round}; counts are totals of both sides. The mark is the time for all of it, taken by hand,
hundredths rounded up to the next tenth. Circuits that were not finished are not in this bundle.`;
}
