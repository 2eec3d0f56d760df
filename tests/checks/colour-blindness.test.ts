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
const desk = sheet.slice(sheet.indexOf('[data-theme="desk"]'), sheet.indexOf('[data-theme="hall"]'));

/** A colour of the desk by its token. */
function token(name: string): string {
  const found = new RegExp(`--${name}: (#[0-9a-f]{6});`).exec(desk)?.[1];
  if (found === undefined) throw new Error(`There is no colour --${name} on the desk.`);
  return found;
}

const lines = testCodes;

test("a matrix leaves white, grey and black as they are", () => {
  for (const matrix of Object.values(visions)) {
    for (const grey of [0, 0.2, 1]) {
      for (const channel of seenAs([grey, grey, grey], matrix)) expect(channel).toBeCloseTo(grey, 5);
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
