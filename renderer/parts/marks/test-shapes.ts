import type { TestCode } from "../../../electron/domain/tests/registry.ts";

interface TestShape {
  /** In a 48 × 48 box; the plainest figure that is not one of the others. */
  readonly outline: string;
  /** The foot of its letter: a triangle has its room below the middle. */
  readonly letterAt: number;
  /** Less room for the letter. */
  readonly small?: true;
}

/**
 * The tests' shapes. They are tokens like the colours in `app/tokens.css`: chosen beside each other, so that no two are
 * taken for one another, and used below the rooms that know a test.
 */
export const testShapes: Readonly<Record<TestCode, TestShape>> = Object.freeze({
  "push-up": { outline: "M4 4h40v40H4z", letterAt: 33.5 },
  agility: { outline: "M12 2h24v10h10v24H36v10H12V36H2V12h10z", letterAt: 33.5 },
  vertical: { outline: "M24 1 47.5 45H.5z", letterAt: 40, small: true },
  core: { outline: "M24 0 48 24 24 48 0 24z", letterAt: 33.5 },
  endurance: { outline: "M24 1a23 23 0 1 0 0 46a23 23 0 1 0 0-46z", letterAt: 33.5 },
});
