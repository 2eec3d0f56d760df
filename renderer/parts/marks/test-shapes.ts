import type { TestCode } from "../../../electron/domain/tests/registry.ts";

interface TestShape {
  /** In a 48 × 48 box; what lies on the floor of that test or happens there. */
  readonly outline: string;
  /** The floor inside it, where the outline is a ring: the letter lies there, and is drawn in the ring's colour. */
  readonly infield?: string;
  /** The middle of its letter's foot, and the letter's height, all in the box. */
  readonly letter: { readonly x: number; readonly y: number; readonly size: number };
}

/**
 * The tests' shapes: a mat, the taped cross, an upright with an arrow head, steps, an oval track. They are tokens like
 * the colours in `app/tokens.css`: chosen beside each other, so that no two are taken for one another, and used below the
 * rooms that know a test. Plain squares, triangles, diamonds and circles are avoided: sets of them are codes elsewhere.
 */
export const testShapes: Readonly<Record<TestCode, TestShape>> = Object.freeze({
  "push-up": { outline: "M0 10h48v28H0z", letter: { x: 24, y: 33, size: 26 } },
  agility: {
    outline: "M14.5 1h19v13.5H47v19H33.5V47h-19V33.5H1v-19h13.5z",
    letter: { x: 24, y: 31.5, size: 21 },
  },
  vertical: { outline: "M24 0 45 18H35.5v30h-23V18H3z", letter: { x: 24, y: 39, size: 26 } },
  core: { outline: "M1 47V32h13V17h14V2h19v45z", letter: { x: 31, y: 42, size: 27 } },
  endurance: {
    outline: "M18 6h12a18 18 0 0 1 0 36H18a18 18 0 0 1 0-36z",
    infield: "M18 11h12a13 13 0 0 1 0 26H18a13 13 0 0 1 0-26z",
    letter: { x: 24, y: 32.5, size: 24 },
  },
});
