import * as Plot from "@observablehq/plot";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import css from "./AgreementPlot.module.css";
import { valueRange, valueTicks, writeTick } from "./axis.ts";
import plotCss from "./Plot.module.css";

/** One athlete of two series: the mean of both readings, and the first less the second; in grains. */
export interface AgreementPoint {
  readonly mean: number;
  readonly difference: number;
}

/** The mean difference and the limits of agreement, in grains. */
export interface AgreementLines {
  readonly bias: number;
  readonly lower: number;
  readonly upper: number;
}

interface AgreementDrawing {
  readonly test: TestCode;
  readonly points: readonly AgreementPoint[];
  readonly lines: AgreementLines;
  readonly width: number;
  readonly lengths: LengthUnit;
  /** A number in the language of now. */
  readonly showNumber: (text: string) => string;
}

const height = 300;
/** Radius of one athlete's dot, in the picture's units. */
const dot = 5;

/**
 * Draws differences over means with the limits of agreement (Bland & Altman 1986). Athletes with equal readings share a
 * dot, whose area says how many they are. Nothing in the picture has inline styles, as the content policy demands.
 */
export function drawAgreement({
  test,
  points,
  lines,
  width,
  lengths,
  showNumber,
}: AgreementDrawing): SVGSVGElement {
  const x = valueRange(points.map(({ mean }) => mean));
  const ends = [...points.map(({ difference }) => difference), lines.lower, lines.upper, 0];
  const y = valueRange(ends);
  const write = (value: number) => showNumber(writeTick(test, value, lengths).replace("-", "−"));
  const marks = [
    Plot.ruleY([0], { className: css.nought ?? "" }),
    Plot.ruleY([lines.lower, lines.upper], { className: css.limit ?? "" }),
    Plot.ruleY([lines.bias], { className: css.bias ?? "" }),
    Plot.dot(together(points), {
      x: "mean",
      y: "difference",
      r: ({ count }: Together) => dot * Math.sqrt(count),
      className: css.dots ?? "",
    }),
    Plot.axisX(valueTicks(test, x.low, x.high, 7, lengths), axis(css.means ?? "", write)),
    Plot.axisY(valueTicks(test, y.low, y.high, 6, lengths), axis(css.differences ?? "", write)),
  ];
  const svg = Plot.plot({
    className: plotCss.plot ?? "",
    ...{ width, height, marginTop: 12, marginRight: 24, marginBottom: 34, marginLeft: 58 },
    x: { domain: [x.low, x.high], axis: null },
    y: { domain: [y.low, y.high], axis: null },
    r: { type: "identity" },
    marks,
  }) as SVGSVGElement;
  svg.querySelector("style")?.remove();
  // Groups without a role may have no name; the picture has one as a whole.
  for (const part of svg.querySelectorAll("[aria-label]")) part.removeAttribute("aria-label");
  return svg;
}

function axis(className: string, write: (value: number) => string) {
  return { className, tickSize: 5, tickPadding: 5, tickFormat: write, label: null };
}

interface Together extends AgreementPoint {
  readonly count: number;
}

function together(points: readonly AgreementPoint[]): Together[] {
  const groups = Map.groupBy(points, ({ mean, difference }) => `${mean} ${difference}`);
  return [...groups.values()].flatMap((some) =>
    some.slice(0, 1).map((one) => ({ ...one, count: some.length })),
  );
}
