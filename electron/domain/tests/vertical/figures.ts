import type { English, Figures } from "../definition.ts";
import { lengthSteps } from "../length-steps.ts";
import type { VerticalParameters } from "./protocol.ts";

export const verticalFigures: Figures = {
  ladder: { steps: [20, 50, 100, 200], profileStep: 50, usual: [100, 750] },
  /** 4 %: Markovic et al. 2004, J Strength Cond Res 18(3): within-subject CV 2.4 to 4.6 %. */
  typicalError: { kind: "share", amount: 0.04 },
  reading: 1,
  middling: 400,
  lanes: 2,
  axisSteps: lengthSteps,
  trial: { value: "touchReach", less: "standingReach" },
};

export const verticalInEnglish: English<VerticalParameters> = {
  ability: "power",
  name: "vertical leap (power)",
  mark: "cm",
  how: ({ trials }) =>
    `Standing jump and touch: the highest touch less the standing reach, best of up to ${trials} trials. Not the same as
a height worked out from flight time.`,
};
