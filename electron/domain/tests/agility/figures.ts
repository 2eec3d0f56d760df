import type { English, Figures } from "../definition.ts";
import type { AgilityParameters } from "./protocol.ts";

export const agilityFigures: Figures = {
  ladder: { steps: [2, 4, 8, 20, 40], profileStep: 8, usual: [48, 180] },
  /** 1 landing of 28: 0.8 of counting and a share. Ours, no source, so worth two degrees. */
  typicalError: { fixed: 0.8, share: 0.0214, degrees: 2 },
  ends: { floor: 0, ceiling: null },
  reading: () => 1,
  middling: 112,
  lanes: 2,
  axisSteps: () => [1, 2, 5, 10, 20].map((landings) => landings * 4),
  trial: null,
};

export const agilityInEnglish: English<AgilityParameters> = {
  ability: "agility",
  name: "quadrant jump",
  mark: "landings, the mean of two directions less touches",
  how: ({ crossSize, seconds, touchPenalty }) =>
    `Jumps with feet together around the four quarters of a taped cross of ${crossSize} mm, for ${seconds} s, once
clockwise and once counter-clockwise. A trial is the landings less ${touchPenalty} for each touch of a line, never below 0;
the mark is the mean of both directions.`,
};
