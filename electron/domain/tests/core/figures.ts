import type { English, Figures } from "../definition.ts";
import { timeSteps } from "../time-steps.ts";
import type { CoreParameters } from "./protocol.ts";

export const coreFigures: Figures = {
  ladder: { steps: [5, 10, 30, 60, 120], profileStep: 30, usual: [15, 600] },
  /**
   * 6 %: between the 2.0 % of a staged plank after one practice (Tong et al. 2014, Phys Ther Sport 15(1)) and the
   * 3.6 to 11.8 % of isometric field tests, which are as wide as the interval of an SD with 6 degrees of freedom: 6 % of
   * two minutes. That 3 s of it are the start, the stop and the watch is ours, no source.
   */
  typicalError: { fixed: 3, share: 0.0545, degrees: 6 },
  /** After the last stage the first begins again. */
  ends: { floor: null, ceiling: 240 },
  reading: () => 1,
  middling: 120,
  lanes: 6,
  axisSteps: () => timeSteps.filter((seconds) => seconds >= 5),
  trial: null,
};

export const coreInEnglish: English<CoreParameters> = {
  ability: "core",
  name: "staged plank",
  mark: "s, rounded down",
  how: ({ cycle }) =>
    `A plank on forearms and feet whose stages grow harder (a foot lifted, an arm, then one of each) over ${cycle} s, and
then begin again. The mark is the whole seconds held, rounded down.`,
};
