import fc from "fast-check";
import { expect, test } from "vitest";
import {
  boardScreen,
  type DisplayArea,
  fitInto,
  homeOf,
  placeOnDisplay,
} from "../../../electron/shell/windows/displays.ts";

function screenAt(id: number, x: number, y: number, width: number, height: number, bar = 40): DisplayArea {
  const bounds = { x, y, width, height };
  return { id, bounds, workArea: { ...bounds, height: height - bar } };
}

const laptop = screenAt(1, 0, 0, 1280, 800);
const hall = screenAt(2, 1280, 0, 1920, 1080, 0);
const third = screenAt(3, -1600, 0, 1600, 900);

test("the board goes to the display it was on, else to any that is not the desk's, else to none", () => {
  expect(boardScreen([laptop, hall, third], 1, 3)).toBe(third);
  expect(boardScreen([laptop, hall, third], 1, null)).toBe(hall);
  expect(boardScreen([laptop, hall, third], 2, 2)).toBe(laptop);
  expect(boardScreen([laptop, hall], 1, 3)).toBe(hall);
  expect(boardScreen([laptop], 1, 2)).toBeUndefined();
});

test("the desk comes back to the same place of its display, also where that display lies elsewhere now", () => {
  const bounds = { x: 1400, y: 100, width: 1280, height: 800 };
  const home = homeOf(bounds, hall);
  expect(placeOnDisplay(home, [laptop, hall], laptop)).toEqual(bounds);
  expect(placeOnDisplay(home, [laptop, screenAt(2, -1920, 200, 1920, 1080, 0)], laptop)).toEqual({
    ...bounds,
    x: -1800,
    y: 300,
  });
});

test("while its display is gone the desk is whole on the one that is left, and then goes home", () => {
  const bounds = { x: 1800, y: 250, width: 1280, height: 800 };
  const home = homeOf(bounds, hall);
  expect(placeOnDisplay(home, [laptop], laptop)).toEqual({ x: 0, y: 0, width: 1280, height: 760 });
  expect(placeOnDisplay(home, [laptop, hall], laptop)).toEqual(bounds);
});

test("a smaller resolution makes the desk fit, and the larger one gives it back", () => {
  const bounds = { x: 300, y: 200, width: 1280, height: 800 };
  const home = homeOf(bounds, screenAt(1, 0, 0, 1920, 1080));
  const small = screenAt(1, 0, 0, 1024, 768);
  expect(placeOnDisplay(home, [small], small)).toEqual({ x: 0, y: 0, width: 1024, height: 728 });
  const large = screenAt(1, 0, 0, 1920, 1080);
  expect(placeOnDisplay(home, [large], large)).toEqual(bounds);
});

const length = fc.integer({ min: 200, max: 4000 });
const corner = fc.integer({ min: -5000, max: 5000 });
const rectangle = fc.record({ x: corner, y: corner, width: length, height: length });

test("whatever is fitted lies inside, and what lies inside already stays as it is", () => {
  fc.assert(
    fc.property(rectangle, rectangle, (bounds, area) => {
      const fitted = fitInto(bounds, area);
      expect(fitted.x).toBeGreaterThanOrEqual(area.x);
      expect(fitted.y).toBeGreaterThanOrEqual(area.y);
      expect(fitted.x + fitted.width).toBeLessThanOrEqual(area.x + area.width);
      expect(fitted.y + fitted.height).toBeLessThanOrEqual(area.y + area.height);
      expect(fitInto(fitted, area)).toEqual(fitted);
      expect(fitted.width).toBe(Math.min(bounds.width, area.width));
    }),
  );
});
