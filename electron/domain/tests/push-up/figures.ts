import type { English, Figures } from "../definition.ts";
import type { PushUpParameters } from "./protocol.ts";

export const pushUpFigures: Figures = {
  ladder: { steps: [1, 2, 5, 10, 20], profileStep: 5, usual: [1, 80] },
  /** 2 reps of 20, 3 of 40: 1.5 reps of judging and a share. Ours, no source, so worth two degrees. */
  typicalError: { fixed: 1.5, share: 0.066, degrees: 2 },
  ends: { floor: 0, ceiling: null },
  reading: () => 1,
  middling: 20,
  lanes: 4,
  axisSteps: () => [1, 2, 5, 10, 20, 50, 100],
  trial: null,
};

export const pushUpInEnglish: English<PushUpParameters> = {
  ability: "strength",
  name: "cadence push-up (strength)",
  mark: "reps",
  how({ bpm, beatsPerRep, missesToStop }) {
    const seconds = Number(((60 / bpm) * beatsPerRep).toFixed(3));
    return `Push-ups in time with a metronome, one every ${seconds} s. The test ends after ${missesToStop} off the beat in a
row or when the athlete stops. The mark is the ordinal of the last one on the beat: a slip recovered from counts, those
that lead to the end do not.`;
  },
};
