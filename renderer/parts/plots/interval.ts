import * as Plot from "@observablehq/plot";
import type { Interval } from "../../../electron/domain/statistics/interval.ts";
import css from "./IntervalPlot.module.css";

/** An estimate with its interval, in steps of the picture's axis. */
export interface Estimate extends Interval {
  readonly amount: number;
}

/** The picture's units: px at its natural size. */
const [width, height] = [240, 30];
const margin = 6;

/**
 * Draws an interval around nought, better to the right. `reach`: the last whole step of the axis, the same in all
 * pictures that are looked at together. Nothing has inline styles, as the content policy demands.
 */
export function drawInterval(estimate: Estimate, reach: number): SVGSVGElement {
  const steps = Array.from({ length: 2 * reach + 1 }, (_, index) => index - reach);
  const { low, high, amount } = estimate;
  const svg = Plot.plot({
    className: css.plot ?? "",
    ...{ width, height, marginTop: 0, marginBottom: 0, marginLeft: margin, marginRight: margin },
    x: { type: "linear", domain: [-reach, reach], axis: null },
    y: { type: "linear", domain: [-1, 1], axis: null },
    marks: [
      Plot.ruleX(steps, { className: css.step ?? "" }),
      Plot.ruleX([0], { className: css.nought ?? "" }),
      Plot.ruleY([0], { x1: low, x2: high, className: css.range ?? "" }),
      Plot.ruleX([low, high], { y1: -0.5, y2: 0.5, className: css.range ?? "" }),
      Plot.dot([amount], { x: amount, y: 0, r: 5, className: css.mean ?? "" }),
    ],
  }) as SVGSVGElement & Plot.Plot;
  svg.querySelector("style")?.remove();
  for (const part of svg.querySelectorAll("[aria-label]")) part.removeAttribute("aria-label");
  svg.setAttribute("aria-hidden", "true");
  return svg;
}
