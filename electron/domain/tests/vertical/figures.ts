import { grainsPerReading } from "../../length.ts";
import type { English, Figures } from "../definition.ts";
import { lengthSteps } from "../length-steps.ts";
import { heightOf, type VerticalAttempt, type VerticalParameters } from "./protocol.ts";

export const verticalFigures: Figures = {
  /** 2 to 20 cm in steps; nearly all leaps are of 10 to 75 cm. */
  ladder: { steps: [400, 1000, 2000, 4000], profileStep: 1000, usual: [2000, 15_000] },
  /**
   * 4 % of 40 cm: Markovic et al. 2004, J Strength Cond Res 18(3): within-subject CV 2.4 to 4.6 %, which is as wide as
   * the interval of an SD with 19 degrees of freedom. That 1 cm of it is reach and tape is ours, no source.
   */
  typicalError: { fixed: 1, share: 0.0312, degrees: 19 },
  ends: { floor: 0, ceiling: null },
  reading: (lengths) => grainsPerReading[lengths],
  middling: 8000,
  lanes: 2,
  axisSteps: lengthSteps,
  trial: (seen) => heightOf(seen as VerticalAttempt),
};

export const verticalInEnglish: English<VerticalParameters> = {
  ability: "power",
  name: "vertical leap (power)",
  mark: "cm",
  how: ({ trials }) =>
    `Standing jump and touch: the highest touch less the standing reach, best of up to ${trials} trials. Not the same as
a height worked out from flight time.`,
};
