import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { createSorter, keyOfLane, nameOfPress, scannerMs } from "../../../renderer/tests/live/liveKeys.ts";
import { writeClock } from "../../../renderer/tests/live/writeClock.ts";

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

/** Presses one after the other, `gap` ms apart, and says what came of them. */
function sorted(names: readonly string[], gap: number): string[] {
  const told: string[] = [];
  const sorter = createSorter(
    (bib) => told.push(`scan ${bib}`),
    ({ name, timeStamp }) => told.push(`${name} at ${timeStamp}`),
  );
  for (const [index, name] of names.entries()) {
    sorter.press({ name, timeStamp: index * gap });
    vi.advanceTimersByTime(gap);
  }
  vi.advanceTimersByTime(1_000);
  return told;
}

test("digits as fast as a scanner's, with Enter, are a bib", () => {
  expect(sorted(["1", "2", "7", "Enter"], 8)).toEqual(["scan 127"]);
});

test("two fingers at once are two presses, each with its own time", () => {
  expect(sorted(["3", "4"], 5)).toEqual(["3 at 0", "4 at 5"]);
});

test("nobody's finger is a scanner: slower digits and Enter are presses", () => {
  expect(sorted(["1", "2", "Enter"], scannerMs + 40)).toEqual(["1 at 0", "2 at 90", "Enter at 180"]);
});

test("a scan right after a press takes nothing of it along", () => {
  const told: string[] = [];
  const sorter = createSorter(
    (bib) => told.push(`scan ${bib}`),
    ({ name }) => told.push(name),
  );
  sorter.press({ name: "5", timeStamp: 0 });
  for (const [index, name] of ["1", "2", "Enter"].entries()) {
    sorter.press({ name, timeStamp: 200 + index * 5 });
  }
  expect(told).toEqual(["5", "scan 12"]);
});

test.each([
  [{ code: "Digit3", key: "3", shiftKey: false }, "3"],
  // The digit row of other layouts gives other signs, and the key stays the lane's.
  [{ code: "Digit3", key: "§", shiftKey: true }, "Shift+3"],
  [{ code: "Digit1", key: "&", shiftKey: false }, "1"],
  [{ code: "Numpad7", key: "7", shiftKey: false }, "7"],
  [{ code: "Equal", key: "´", shiftKey: false }, "="],
  [{ code: "Space", key: " ", shiftKey: false }, "Space"],
  [{ code: "KeyN", key: "n", shiftKey: false }, "N"],
])("%j is %s", (event, name) => {
  expect(nameOfPress(event)).toBe(name);
});

test("twelve lanes have twelve keys", () => {
  const keys = Array.from({ length: 12 }, (_none, index) => keyOfLane(index + 1));
  expect(new Set(keys).size).toBe(12);
  expect(keys.slice(8)).toEqual(["9", "0", "-", "="]);
});

test.each([
  [-3000, false, "−3"],
  [-1, false, "−1"],
  [0, false, "0:00"],
  [59_999, false, "0:59"],
  [60_000, true, "1:00.0"],
  [3_599_950, true, "59:59.9"],
])("%i ms is written %s", (ms, tenths, text) => {
  expect(writeClock(ms, tenths)).toBe(text);
});
