import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { afterEach, beforeEach, expect, test } from "vitest";
import { monotonic } from "../../electron/host/monotonic.ts";
import { testDesk } from "./desk.ts";
import { by, entered, type Hall, hallAt, liveOf, sent, startedHeat } from "./heat-hall.ts";

let folder = "";
const opened: Hall[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-heat-"));
});
afterEach(() => {
  for (const hall of opened.splice(0)) hall.desk.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A plank of two lanes on a store in a file, at time 0. */
async function plank(): Promise<{ hall: Hall; heatId: string }> {
  const hall = await hallAt("core", join(folder, "tapeline.sqlite"));
  opened.push(hall);
  return { hall, heatId: await startedHeat(hall, "core", 2) };
}

/** The program is killed (nothing is closed) and started again on the same store and the same machine. */
function restarted(hall: Hall): Hall {
  const desk = testDesk(join(folder, "tapeline.sqlite"), hall.clock);
  const again = { ...hall, ...desk, heat: desk.as("station").heat };
  opened.push(again);
  return again;
}

async function clockOf(hall: Hall) {
  const { elapsedMs, clock, state } = liveOf(await hall.heat.view({ test: "core" }));
  return { elapsedMs, clock, state };
}

test("the start is the tap's moment, not the moment it arrived; a second start changes nothing", async () => {
  const hall = await hallAt("core");
  const { heatId } = await hall.heat.gather({ test: "core", heatId: crypto.randomUUID(), lanes: 2, by });
  hall.clock.tick(120);
  expect(await hall.heat.start({ heatId, startedAgoMs: 87.5 })).toEqual({ elapsedMs: -2912.5 });
  hall.clock.tick(5000);
  expect(await hall.heat.start({ heatId, startedAgoMs: 5087.5 })).toEqual({ elapsedMs: 2087.5 });
  expect(await clockOf(hall)).toEqual({ elapsedMs: 2087.5, clock: "monotonic", state: "running" });
});

test("a start that the network held up for four seconds began at its tap, and says how sure that is", async () => {
  const hall = await hallAt("core");
  const { heatId } = await hall.heat.gather({ test: "core", heatId: crypto.randomUUID(), lanes: 2, by });
  const { ms, boot } = await hall.heat.clock({ heatId });
  hall.clock.tick(4_120);
  // The device that was tapped 120 ms after it had read the table's clock, to within 30 ms.
  const tapped = { ms: ms + 120, boot, doubtMs: 30 };
  expect(await hall.heat.start({ heatId, startedAgoMs: 0, tapped })).toEqual({ elapsedMs: 1_000 });
  expect(liveOf(await hall.heat.view({ test: "core" })).startDoubtMs).toBe(30);
});

test("a start said on the clock of another boot goes by its age, and nobody knows how late it is", async () => {
  const hall = await hallAt("core");
  const { heatId } = await hall.heat.gather({ test: "core", heatId: crypto.randomUUID(), lanes: 2, by });
  const tapped = { ms: 5, boot: "before", doubtMs: 1 };
  expect(await hall.heat.start({ heatId, startedAgoMs: 700, tapped })).toEqual({ elapsedMs: -2_300 });
  expect(liveOf(await hall.heat.view({ test: "core" })).startDoubtMs).toBeNull();
});

test.each([-3_600_000, 3_600_000])(
  "killed in minute four, the wall clock jumping by %i ms: the same clock",
  async (jump) => {
    const { hall, heatId } = await plank();
    hall.clock.tick(200_000);
    await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 199_500)] });
    hall.clock.at = new Date(hall.clock.at.getTime() + jump);
    hall.clock.tick(20_000.25);
    const again = restarted(hall);
    expect(await clockOf(again)).toEqual({ elapsedMs: 220_000.25, clock: "monotonic", state: "running" });
    hall.clock.tick(20_000);
    await again.heat.tap({ heatId, by, events: [sent(2, "stop", 239_000)] });
    expect(entered(again).map(({ seen }) => seen)).toEqual([{ held: 199_500 }, { held: 239_000 }]);
  },
);

test("a machine that started anew falls back to wall time, and says so", async () => {
  const { hall } = await plank();
  hall.clock.tick(100_000);
  hall.clock.at = new Date(hall.clock.at.getTime() + 45_000);
  hall.clock.monotonic = { ms: 30_000, boot: "started anew" };
  expect(await clockOf(restarted(hall))).toEqual({ elapsedMs: 145_000, clock: "wall", state: "running" });
});

test("undo after a restart goes by the same clock", async () => {
  const { hall, heatId } = await plank();
  hall.clock.tick(60_000);
  const slip = sent(1, "stop", 59_000);
  await hall.heat.tap({ heatId, by, events: [slip] });
  hall.clock.at = new Date(hall.clock.at.getTime() + 3_600_000);
  hall.clock.tick(9000);
  const again = restarted(hall);
  await again.heat.undo({ heatId, eventId: slip.id, id: crypto.randomUUID(), by });
  expect(entered(again)).toEqual([{ bib: 1, seen: { held: 59_000 }, stands: false }]);
});

test("the machine's own clock goes on, and names its start", async () => {
  // Wall time before and after each look: on a busy machine any time may pass in between.
  const look = () => ({ from: Date.now(), at: monotonic(), until: Date.now() });
  const one = look();
  await setTimeout(60);
  const other = look();
  const [first, later] = [one.at, other.at];
  expect(later.boot).toBe(first.boot);
  expect(first.boot).not.toBe("");
  // Both clocks of the machine agree on a short time; wall time is told in whole ms.
  expect(later.ms - first.ms).toBeGreaterThan(other.from - one.until - 2);
  expect(later.ms - first.ms).toBeLessThan(other.until - one.from + 2);
});
