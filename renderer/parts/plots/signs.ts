import type { ChannelValues, RenderFunction } from "@observablehq/plot";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { testShapes } from "../marks/test-shapes.ts";
import css from "./HistoryPlot.module.css";
import type { HistoryPoint } from "./points.ts";

const namespace = "http://www.w3.org/2000/svg";
/** Side of the box of outlines. */
const box = 48;
/** Scale of today's symbol. */
export const todayScale = 1.45;

interface Signs {
  readonly test: TestCode;
  readonly letter: string;
  /** Side of an earlier mark, in the picture's units; today's is larger. */
  readonly side: number;
  /** True if earlier marks have letters too. */
  readonly lettered: boolean;
}

/** Draws the test's symbol at each mark: outlined like a court line for earlier ones, filled and larger for today's. */
export function signs(points: readonly HistoryPoint[], look: Signs): RenderFunction {
  return (index, _scales, values, _dimensions, { document }) => {
    const group = document.createElementNS(namespace, "g");
    for (const each of index) {
      const point = points[each];
      if (point === undefined) continue;
      group.append(sign(document, point, placeOf(values, each), look));
    }
    return group;
  };
}

function placeOf({ x, y }: ChannelValues, index: number): { readonly x: number; readonly y: number } {
  return { x: Number(x?.[index]), y: Number(y?.[index]) };
}

function sign(
  document: Document,
  { today = false }: HistoryPoint,
  { x, y }: { readonly x: number; readonly y: number },
  { test, letter, side, lettered }: Signs,
): SVGGElement {
  const scale = (today ? side * todayScale : side) / box;
  const each = document.createElementNS(namespace, "g");
  each.setAttribute("class", css.sign ?? "");
  each.setAttribute("data-today", String(today));
  each.setAttribute("transform", `translate(${x} ${y}) scale(${scale}) translate(${-box / 2} ${-box / 2})`);
  const { outline, infield } = testShapes[test];
  each.append(pathOf(document, outline));
  if (infield !== undefined) each.append(pathOf(document, infield, css.infield));
  if (today || lettered) each.append(letterIn(document, test, letter));
  return each;
}

function pathOf(document: Document, outline: string, name = ""): SVGPathElement {
  const path = document.createElementNS(namespace, "path");
  path.setAttribute("d", outline);
  path.setAttribute("class", name);
  return path;
}

function letterIn(document: Document, test: TestCode, letter: string): SVGTextElement {
  const text = document.createElementNS(namespace, "text");
  const { infield, letter: place } = testShapes[test];
  text.setAttribute("x", String(place.x));
  text.setAttribute("y", String(place.y));
  text.setAttribute("font-size", String(place.size));
  text.setAttribute("data-ring", String(infield !== undefined));
  text.textContent = letter;
  return text;
}
