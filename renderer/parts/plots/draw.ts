import * as Plot from "@observablehq/plot";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../../electron/domain/tests/registry.ts";
import { valueRange, valueTicks, writeTick } from "./axis.ts";
import { type DateTick, dateRange, dateTicks, instantOf, ticksBetween } from "./dates.ts";
import css from "./HistoryPlot.module.css";
import plotCss from "./Plot.module.css";
import { type HistoryPoint, lastTestOf, type Noise, type PlotSize } from "./points.ts";
import { signs, todayScale } from "./signs.ts";

/** The input of a drawing; text in words or in the reader's units comes ready. */
export interface Drawing {
  readonly test: TestCode;
  /** At least one, oldest first. */
  readonly points: readonly HistoryPoint[];
  readonly noise: Noise | null;
  readonly size: PlotSize;
  readonly width: number;
  readonly lengths: LengthUnit;
  readonly letter: string;
  readonly writeDate: (tick: DateTick) => string;
  /** A number in the language of now. */
  readonly showNumber: (text: string) => string;
}

/** The position of a mark in the picture's own coordinates, and the radius of a ring around its symbol. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly ring: number;
}

/** The picture, and each point's position in it. */
export interface Drawn {
  readonly svg: SVGSVGElement;
  readonly places: readonly Place[];
}

/** Sizes in the picture's units: px on a page, about ¼ mm on a card. `figure`: a digit's width at the axis. */
export const measures = {
  page: {
    height: 212,
    top: 12,
    right: 34,
    bottom: 34,
    left: 58,
    sign: 19,
    ticks: 5,
    between: 3,
    figure: 8.9,
  },
  card: { height: 88, top: 8, right: 20, bottom: 18, left: 36, sign: 12, ticks: 3, between: 0, figure: 6.2 },
} as const;
export const cardWidth = 240;
/** Most marks at full size; more are drawn smaller, without letters except today's. */
const crowd = 16;

/**
 * Draws the marks over time. Nothing in the picture has inline styles: looks come from classes, as the content policy
 * demands, and the library's style element is removed before the page gets the picture.
 */
export function draw(drawing: Drawing): Drawn {
  const { test, points, noise, size, lengths } = drawing;
  const measure = measures[size];
  const [first, last] = [points[0]?.date ?? "", points.at(-1)?.date ?? ""];
  const band = noise === null ? [] : [noise.low, noise.high];
  const { low, high } = valueRange([...points.map(({ value }) => value), ...band]);
  const x = dateRange(first, last);
  const ticks = valueTicks(test, low, high, measure.ticks, lengths);
  const longest = Math.max(0, ...ticks.map((tick) => writeTick(test, tick, lengths).length));
  const left = Math.max(measure.left, longest * measure.figure + 12);
  const between = ticksBetween(drawing.width - left - measure.right, measure.between);
  const svg = Plot.plot({
    className: plotCss.plot ?? "",
    width: drawing.width,
    height: measure.height,
    marginTop: measure.top,
    marginRight: measure.right,
    marginBottom: measure.bottom,
    marginLeft: left,
    x: { type: "utc", domain: x, axis: null },
    y: { type: "linear", domain: [low, high], reverse: protocolOf(test).better === "lower", axis: null },
    marks: [
      ...valueAxis(ticks, (tick) => drawing.showNumber(writeTick(test, tick, lengths))),
      ...noiseMarks(points, noise, x[1]),
      ...dateAxis(dateTicks(first, last, between), drawing.writeDate),
      Plot.dot(points, {
        x: ({ date }) => instantOf(date),
        y: "value",
        render: signs(points, { ...drawing, side: sideOf(drawing), lettered: points.length <= crowd }),
      }),
    ],
  }) as SVGSVGElement & Plot.Plot;
  svg.querySelector("style")?.remove();
  // Groups without a role may have no name; the picture has one as a whole.
  for (const part of svg.querySelectorAll("[aria-label]")) part.removeAttribute("aria-label");
  return { svg, places: placesOf(svg, drawing) };
}

function sideOf({ size, points }: Drawing): number {
  const { sign } = measures[size];
  return points.length > crowd ? sign * 0.68 : sign;
}

function placesOf(svg: Plot.Plot, drawing: Drawing): Place[] {
  const [x, y] = [svg.scale("x"), svg.scale("y")];
  const side = sideOf(drawing);
  return drawing.points.map(({ date, value, today = false }) => ({
    x: Number(x?.apply(instantOf(date))),
    y: Number(y?.apply(value)),
    ring: (today ? side * todayScale : side) * 0.75 + 4,
  }));
}

function valueAxis(ticks: readonly number[], write: (tick: number) => string): Plot.Markish[] {
  return [
    Plot.ruleY(ticks, { className: css.grid ?? "" }),
    Plot.axisY(ticks, {
      className: css.values ?? "",
      tickSize: 0,
      tickPadding: 8,
      tickFormat: (tick: number) => write(tick),
      label: null,
    }),
  ];
}

function dateAxis(ticks: readonly DateTick[], write: (tick: DateTick) => string): Plot.Markish[] {
  const words = new Map(ticks.map((tick) => [tick.at.getTime(), write(tick)]));
  return [
    Plot.axisX(
      ticks.map(({ at }) => at),
      {
        className: css.dates ?? "",
        tickSize: 5,
        tickPadding: 4,
        tickFormat: (at: Date) => words.get(at.getTime()) ?? "",
        label: null,
      },
    ),
  ];
}

/** Returns the noise band, which begins at the last test: a later mark must leave it to be a change. */
function noiseMarks(points: readonly HistoryPoint[], noise: Noise | null, end: Date): Plot.Markish[] {
  const last = lastTestOf(points);
  if (noise === null || last === undefined) return [];
  const from = instantOf(last.date);
  const { low, high } = noise;
  const edge = { x1: from, x2: end, className: css.noiseEdge ?? "" };
  return [
    Plot.rect([noise], { x1: from, x2: end, y1: low, y2: high, className: css.noise ?? "" }),
    Plot.ruleY([low, high], edge),
  ];
}
