import { expect, test } from "vitest";
import { undoable, undoTrouble } from "../../../electron/domain/heats/fold.ts";
import { textOf } from "../domain/text.ts";
import { back, tap } from "./taps.ts";

test("a tap can be taken back for ten seconds", () => {
  const stop = tap("stop", 60_000);
  expect(undoTrouble([stop], stop.id, 70_000)).toBeNull();
  const late = undoTrouble([stop], stop.id, 70_001);
  expect(late && textOf(late)).toContain("10 seconds");
});

test("a tap is taken back once, and taking back is not taken back", () => {
  const stop = tap("stop", 60_000);
  const undo = back(stop);
  expect(undoTrouble([stop, undo], stop.id, 62_000)?.key).toBe("heat.undo.twice");
  expect(undoTrouble([stop, undo], undo.id, 62_000)?.key).toBe("heat.undo.unknown");
  expect(undoTrouble([stop], "nothing", 62_000)?.key).toBe("heat.undo.unknown");
});

test("the newest tap that stands is the one to take back", () => {
  const [first, second] = [tap("stop", 60_000), tap("stop", 63_000, {}, 2)];
  expect(undoable([first, second], 65_000)).toEqual({ event: second, leftMs: 8000 });
  expect(undoable([first, second, back(second)], 65_000)).toEqual({ event: first, leftMs: 5000 });
  expect(undoable([first, second], 73_001)).toBeNull();
  expect(undoable([], 0)).toBeNull();
});
