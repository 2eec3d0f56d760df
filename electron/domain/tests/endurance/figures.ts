import { formatTime } from "../../units.ts";
import type { English, Figures } from "../definition.ts";
import { timeSteps } from "../time-steps.ts";
import type { EnduranceParameters } from "./protocol.ts";

export const enduranceFigures: Figures = {
  ladder: {
    steps: [5000, 10_000, 30_000, 60_000, 120_000],
    profileStep: 30_000,
    usual: [120_000, 900_000],
  },
  /** 3 % of six minutes, 2 s of it the watch and the finish. Ours, no source, so worth two degrees. */
  typicalError: { fixed: 2, share: 0.0295, degrees: 2 },
  ends: { floor: null, ceiling: null },
  /** A tenth of a second. */
  reading: () => 100,
  middling: 360_000,
  lanes: 8,
  axisSteps: () => timeSteps.map((seconds) => seconds * 1000),
  writeTick: (value) => formatTime(value, false),
  trial: null,
};

export const enduranceInEnglish: English<EnduranceParameters> = {
  ability: "endurance",
  name: "circuit",
  mark: "s, rounded up to the tenth",
  how({ rounds, exercises }) {
    const round = exercises
      .map(({ exercise, count }) => `${count} ${exercise.replaceAll("-", " ")}`)
      .join(", ");
    return `${rounds} rounds of: ${round}; counts are totals of both sides. The mark is the time for all of it, taken by hand,
hundredths rounded up to the next tenth. Circuits that were not finished are not in this bundle.`;
  },
};
