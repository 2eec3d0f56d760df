import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { contrast, type Light, linear } from "./wcag.ts";

type Colour = Light;
type Matrix = readonly [Colour, Colour, Colour];

/**
 * Colour blindness in full, on linear sRGB. Source: Machado, Oliveira & Fernandes 2009, IEEE Transactions on
 * Visualization and Computer Graphics 15(6), severity 1.0 (from memory).
 */
const visions: Readonly<Record<string, Matrix>> = {
  everybody: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

function seenAs(colour: Colour, matrix: Matrix): Colour {
  const [red, green, blue] = colour;
  const row = ([r, g, b]: Colour) => Math.min(1, Math.max(0, r * red + g * green + b * blue));
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])];
}

/** Half of one colour over another, mixed as screens mix: on the sRGB values. */
function half(over: string, ground: string): Colour {
  const byte = (at: number) => {
    const sum = Number.parseInt(over.slice(at, at + 2), 16) + Number.parseInt(ground.slice(at, at + 2), 16);
    return Math.round(sum / 2)
      .toString(16)
      .padStart(2, "0");
  };
  return linear(`#${byte(1)}${byte(3)}${byte(5)}`);
}

const sheet = readFileSync(new URL("../../renderer/app/tokens.css", import.meta.url), "utf8");
const [deskBegins, hallBegins] = ['[data-theme="desk"]', '[data-theme="hall"]'].map((head) =>
  sheet.indexOf(head),
);
const themes = { desk: sheet.slice(deskBegins, hallBegins), hall: sheet.slice(hallBegins) } as const;

/** A colour of a theme by its token. */
function token(name: string, theme: keyof typeof themes = "desk"): string {
  const found = new RegExp(`--${name}: (#[0-9a-f]{6});`).exec(themes[theme])?.[1];
  if (found === undefined) throw new Error(`There is no colour --${name} in the ${theme}.`);
  return found;
}

/**
 * How far two colours look apart: their distance in Oklab. Source: Björn Ottosson, "A perceptual color space for image
 * processing" (2020), the matrices from linear sRGB (from memory).
 */
function apart(one: Colour, other: Colour): number {
  const [from, to] = [oklab(one), oklab(other)];
  return Math.hypot(...from.map((part, index) => part - (to[index] ?? Number.NaN)));
}

function oklab([r, g, b]: Colour): Colour {
  const long = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const middle = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const short = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * long + 0.793617785 * middle - 0.0040720468 * short,
    1.9779984951 * long - 2.428592205 * middle + 0.4505937099 * short,
    0.0259040371 * long + 0.7827717662 * middle - 0.808675766 * short,
  ];
}

const lines = testCodes;

test("a matrix leaves white, grey and black as they are", () => {
  for (const matrix of Object.values(visions)) {
    for (const grey of [0, 0.2, 1]) {
      for (const channel of seenAs([grey, grey, grey], matrix)) expect(channel).toBeCloseTo(grey, 5);
    }
  }
});

test("the distance is right: none from itself, one from black to white, and red from green as published", () => {
  const [black, white] = [linear("#000000"), linear("#ffffff")];
  expect(apart(white, white)).toBe(0);
  expect(apart(black, white)).toBeCloseTo(1, 3);
  // Oklab of red is 0.628, 0.225, 0.126, and of green 0.866, -0.234, 0.179 (the same source, from memory).
  expect(apart(linear("#ff0000"), linear("#00ff00"))).toBeCloseTo(Math.hypot(0.238, 0.459, 0.053), 2);
});

// 0.1 is common practice for two areas that are told apart at a glance, no source.
describe.each(Object.entries(visions))("the tests' colours as %s sees them", (_name, matrix) => {
  test.each(["desk", "hall"] as const)("are told apart at the %s", (theme) => {
    for (const [index, one] of lines.entries()) {
      for (const other of lines.slice(index + 1)) {
        const distance = apart(...seen(matrix, theme, one, other));
        expect(distance, `${one} and ${other}`).toBeGreaterThanOrEqual(0.1);
      }
    }
  });
});

function seen(matrix: Matrix, theme: keyof typeof themes, one: string, other: string): [Colour, Colour] {
  return [seenAs(linear(token(one, theme)), matrix), seenAs(linear(token(other, theme)), matrix)];
}

test("no test's colour is taken for what is wrong", () => {
  for (const theme of ["desk", "hall"] as const) {
    for (const line of lines) {
      const distance = apart(linear(token(line, theme)), linear(token("alert", theme)));
      expect(distance, `${line}, ${theme}`).toBeGreaterThanOrEqual(0.1);
    }
  }
});

describe.each(Object.entries(visions))("a plot as %s sees it", (_name, matrix) => {
  const see = (colour: Colour) => seenAs(colour, matrix);

  test("letters are read: in a test's colour on paper, and on the shape filled with it", () => {
    expect(lines).toHaveLength(testCodes.length);
    for (const line of lines) {
      const colour = see(linear(token(line)));
      expect(contrast(colour, see(linear(token("paper"))))).toBeGreaterThanOrEqual(4.5);
      expect(contrast(colour, see(linear("#ffffff")))).toBeGreaterThanOrEqual(4.5);
      expect(contrast(see(linear(token("on-test"))), colour)).toBeGreaterThanOrEqual(4.5);
    }
  });

  test("shapes stand out from the noise band, and its edge from the paper", () => {
    const band = see(half(token("line-soft"), token("paper")));
    for (const line of lines) expect(contrast(see(linear(token(line))), band)).toBeGreaterThanOrEqual(3);
    expect(contrast(see(linear(token("line"))), see(linear(token("paper"))))).toBeGreaterThanOrEqual(3);
  });

  test("the words at the axes are read", () => {
    const words = see(linear(token("ink-soft")));
    expect(contrast(words, see(linear(token("paper"))))).toBeGreaterThanOrEqual(4.5);
  });
});
