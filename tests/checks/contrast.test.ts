import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { computed, contrast, linear } from "./wcag.ts";

const sheet = readFileSync(new URL("../../renderer/app/tokens.css", import.meta.url), "utf8");
const hallBegins = sheet.indexOf('[data-theme="hall"]');
const themes = { desk: sheet.slice(0, hallBegins), hall: sheet.slice(hallBegins) } as const;

/** Contrast of two colours of a theme, by their tokens. */
function between(theme: keyof typeof themes, one: string, other: string): number {
  const colour = (name: string) => {
    const found = new RegExp(`--${name}: (#[0-9a-f]{6});`).exec(themes[theme])?.[1];
    if (found === undefined) throw new Error(`There is no colour --${name} in the ${theme}.`);
    return linear(found);
  };
  return contrast(colour(one), colour(other));
}

const tests = testCodes;

test("the measure is right: black on white, and the lightest grey that passes", () => {
  expect(contrast(linear("#000000"), linear("#ffffff"))).toBeCloseTo(21, 6);
  // Source: WCAG 2.2, understanding 1.4.3: #767676 on white is 4.54 : 1, and #777777 is the first that fails.
  expect(contrast(linear("#767676"), linear("#ffffff"))).toBeCloseTo(4.54, 2);
  expect(contrast(linear("#777777"), linear("#ffffff"))).toBeLessThan(4.5);
  expect(contrast(computed("rgb(118, 118, 118)"), linear("#ffffff"))).toBeCloseTo(4.54, 2);
  expect(() => computed("rgba(0, 0, 0, 0.5)")).toThrow("no plain colour");
});

// WCAG 2.2, 1.4.6 (enhanced): 7 : 1, for text that is read from the back of a hall.
describe("in the hall everything is read at 7 : 1", () => {
  test.each(["floor", "paper", "well"])("on the %s", (ground) => {
    for (const ink of ["ink", "ink-soft", "tape", ...tests]) {
      expect(between("hall", ink, ground), ink).toBeGreaterThanOrEqual(7);
    }
  });

  test("on tape, and the letter on each test's shape", () => {
    expect(between("hall", "on-tape", "tape")).toBeGreaterThanOrEqual(7);
    for (const shape of tests) expect(between("hall", "on-test", shape), shape).toBeGreaterThanOrEqual(7);
  });
});

describe("at the desk", () => {
  test.each(["floor", "paper", "well", "tape"])("numerals and text in ink at 7 : 1 on the %s", (ground) => {
    expect(between("desk", "ink", ground)).toBeGreaterThanOrEqual(7);
  });

  // WCAG 2.2, 1.4.3 (minimum): 4.5 : 1.
  test.each(["floor", "paper", "well"])("second text and what is wrong at 4.5 : 1 on the %s", (ground) => {
    for (const ink of ["ink-soft", "alert"]) {
      expect(between("desk", ink, ground), ink).toBeGreaterThanOrEqual(4.5);
    }
  });

  test("what is wrong on its own ground, and the letter on each test's shape", () => {
    expect(between("desk", "alert", "alert-ground")).toBeGreaterThanOrEqual(4.5);
    expect(between("desk", "ink", "alert-ground")).toBeGreaterThanOrEqual(7);
    for (const shape of tests) expect(between("desk", "on-test", shape), shape).toBeGreaterThanOrEqual(4.5);
  });

  // WCAG 2.2, 1.4.11 (non-text contrast): 3 : 1 for what bounds a control.
  test("lines that bound a field or a button at 3 : 1", () => {
    for (const ground of ["paper", "floor", "well"]) {
      expect(between("desk", "line", ground), ground).toBeGreaterThanOrEqual(3);
    }
  });
});
