import { type TestCode, testCodes } from "../domain/tests/registry.ts";
import { plainHeader } from "./plain.ts";

/** Usual names of the tests: their codes, the screens' names in either language, and short forms. */
const words: Readonly<Record<TestCode, readonly string[]>> = {
  "push-up": [
    ...["push-up", "push-ups", "cadence push-up", "cadence push-ups", "strength"],
    ...["flexiones con cadencia", "flexiones", "flexión", "fuerza"],
  ],
  agility: [
    ...["agility", "quadrant jump", "quadrant jumps", "quadrants", "quadrant", "agilidad"],
    ...["salto en cuadrantes", "saltos en cuadrantes", "cuadrantes"],
  ],
  vertical: [
    ...["vertical", "vertical leap", "vertical jump", "leap", "jump", "power"],
    ...["salto vertical", "salto", "potencia"],
  ],
  core: ["core", "plank", "staged plank", "planks", "tronco", "plancha", "plancha por etapas"],
  endurance: ["endurance", "circuit", "resistencia", "circuito"],
};

const codes = new Map(
  testCodes.flatMap((code) => words[code].map((word) => [plainHeader(word), code] as const)),
);

/** The test that people call so; undefined when none is. */
export function testCalled(text: string): TestCode | undefined {
  return codes.get(plainHeader(text));
}

/** All plain words for tests with what they mean, the longest first, so that none is found inside a longer one. */
export const testWords: readonly (readonly [word: string, test: TestCode])[] = [...codes].sort(
  ([one], [other]) => other.length - one.length,
);
