import * as Plot from "@observablehq/plot";
import type { Break } from "../../../electron/domain/plan/hall.ts";
import type { Span, StationLoad } from "../../../electron/domain/plan/told.ts";
import css from "./LoadPlot.module.css";
import plotCss from "./Plot.module.css";

/** What all stations' pictures of one plan share, so that they can be read under each other. Times are seconds. */
export interface LoadFrame {
  /** The end of the time axis, which begins at 0. */
  readonly until: number;
  /** The most athletes who wait for any station: the reach below the line. */
  readonly mostWaiting: number;
  readonly breaks: readonly Break[];
  /** When the day is done. */
  readonly end: Span;
  readonly ticks: readonly number[];
}

interface LoadDrawing extends LoadFrame {
  readonly load: StationLoad;
  /** px. */
  readonly width: number;
}

/** Height of one station's picture, in px: its places above the line, who waits below it. */
const height = 50;
/** Room for half a tick's text at either end, as under the last picture. */
const loadMargin = 22;
/** Room over and under what is drawn, as parts of a half. */
const air = 0.1;

interface Step {
  readonly at: number;
  readonly value: number;
}

/**
 * Draws how full a station is over time, upwards, and how many wait for it, downwards. Nothing in the picture has
 * inline styles, as the content policy demands.
 */
export function drawLoad(drawing: LoadDrawing): SVGSVGElement {
  const { load, until, mostWaiting, breaks, end, ticks, width } = drawing;
  const whole = { y1: -1 - air, y2: 1 + air };
  const used = stepsOf(load, load.used, until);
  const waiting = stepsOf(
    load,
    load.waiting.map((each) => -depthOf(each / Math.max(1, mostWaiting))),
    until,
  );
  return plain({
    ...{ width, height, marginLeft: loadMargin, marginRight: loadMargin },
    x: { type: "linear", domain: [0, until], axis: null },
    y: { type: "linear", domain: [-1 - air, 1 + air], axis: null },
    marks: [
      Plot.rect(breaks, { x1: "from", x2: "until", ...whole, className: css.rest ?? "" }),
      Plot.ruleX(ticks, { className: css.tick ?? "" }),
      Plot.rect([end], { x1: "from", x2: "until", ...whole, className: css.end ?? "" }),
      area(used, css.used),
      area(waiting, css.waiting),
      Plot.ruleY([0], { className: css.floor ?? "" }),
    ],
  });
}

/** A queue of four is half as deep as one of sixteen: a first one of everybody would leave nothing to see of the others. */
function depthOf(part: number): number {
  return Math.sqrt(part);
}

/** Draws the time axis that stands under all stations. */
export function drawTimes(
  { until, ticks, width }: Pick<LoadDrawing, "until" | "ticks" | "width">,
  write: (seconds: number) => string,
): SVGSVGElement {
  return plain({
    ...{ width, height: 28, marginTop: 0, marginBottom: 26, marginLeft: loadMargin, marginRight: loadMargin },
    x: { type: "linear", domain: [0, until], axis: null },
    marks: [
      Plot.axisX(ticks, {
        className: css.times ?? "",
        tickSize: 4,
        tickPadding: 4,
        tickFormat: write,
        label: null,
      }),
    ],
  });
}

function area(steps: readonly Step[], className: string | undefined): Plot.Markish {
  return Plot.areaY(steps, { x: "at", y: "value", curve: "step-after", className: className ?? "" });
}

/** Returns the values at the start of each step, with the last one held until the end. */
function stepsOf({ step }: StationLoad, values: readonly number[], until: number): Step[] {
  const inside = values.map((value, index) => ({ at: index * step, value })).filter(({ at }) => at < until);
  const last = inside.at(-1);
  return last === undefined ? [] : [...inside, { at: Math.min(until, last.at + step), value: last.value }];
}

function plain(options: Plot.PlotOptions): SVGSVGElement {
  const svg = Plot.plot({ marginTop: 0, marginBottom: 0, ...options, className: plotCss.plot ?? "" });
  svg.querySelector("style")?.remove();
  for (const part of svg.querySelectorAll("[aria-label]")) part.removeAttribute("aria-label");
  svg.setAttribute("aria-hidden", "true");
  return svg as SVGSVGElement;
}
