import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { marksOfDay } from "../../electron/store/tables/marks.ts";
import { cm } from "../lengths.ts";
import { testDesk } from "./desk.ts";
import { by, fromHeats, type Hall, hallAt, lanesOf, sent, startedHeat } from "./heat-hall.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-heat-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

type Sent = ReturnType<typeof sent>;
type Code = Parameters<typeof startedHeat>[1];

/** One heat of each test, as its volunteer taps it; undo takes back the tap before it. */
const heats: readonly [Code, number, readonly (Sent | "undo")[]][] = [
  [
    "push-up",
    3,
    [
      sent(2, "off", 6100),
      sent(1, "off", 9200),
      sent(2, "off", 9300),
      sent(3, "off", 12_000),
      "undo",
      sent(2, "off", 12_400),
      sent(1, "on-again", 14_000, { cadence: 3 }),
      sent(1, "stop", 33_500),
      sent(3, "stop", 60_200),
    ],
  ],
  [
    "agility",
    2,
    [
      sent(null, "go", 3000, { direction: "cw" }),
      sent(1, "landing", 3100),
      sent(1, "false-start", 4000),
      sent(2, "count", 14_000, { laps: 6, extra: 2, touches: 1 }),
      sent(1, "go", 20_000, { direction: "cw" }),
      ...[20_400, 20_900, 21_500, 22_000, 22_600].map((ms) => sent(1, "landing", ms)),
      sent(1, "touch", 22_700),
      ...[23_000, 23_500, 24_000, 25_000, 26_000, 27_000, 28_000, 29_000].map((ms) => sent(1, "landing", ms)),
      sent(1, "take", 31_000),
      sent(2, "rerun", 32_000, { direction: "cw", reason: "A ball rolled in" }),
      sent(null, "go", 60_000, { direction: "ccw" }),
      sent(1, "count", 71_000, { laps: 7, extra: 0, touches: 0 }),
      sent(2, "count", 72_000, { laps: 5, extra: 3, touches: 0 }),
    ],
  ],
  [
    "vertical",
    2,
    [
      sent(1, "reach", 2000, { length: cm(219) }),
      sent(2, "reach", 8000, { length: cm(205), bodyMass: 64_000 }),
      sent(1, "touch", 15_000, { length: cm(261) }),
      sent(2, "touch", 21_000, { length: cm(240) }),
      "undo",
      sent(2, "touch", 28_000, { length: cm(245) }),
      sent(1, "touch", 40_000, { length: cm(265.5) }),
      sent(1, "enough", 41_000),
      sent(2, "touch", 50_000, { length: cm(244) }),
      sent(2, "touch", 60_000, { length: cm(246) }),
    ],
  ],
  [
    "core",
    6,
    [
      sent(4, "stop", 61_234),
      sent(1, "stop", 118_000),
      sent(1, "stop", 119_000),
      sent(6, "stop", 150_001),
      "undo",
      sent(3, "aside", 180_000),
      sent(2, "stop", 239_999),
      sent(6, "stop", 240_000),
      sent(5, "stop", 301_500),
    ],
  ],
  [
    "endurance",
    6,
    [
      ...[1, 2, 3, 4, 5].map((lane) => sent(lane, "round", 90_000 + lane * 1111)),
      sent(6, "not-finished", 100_000, { repsDone: 71 }),
      ...[2, 1, 4, 3, 5].map((lane, index) => sent(lane, "round", 190_000 + index * 999)),
      sent(3, "round", 194_100),
      "undo",
      ...[4, 2, 1].map((lane, index) => sent(lane, "round", 290_000 + index * 1501)),
      sent(5, "not-finished", 320_000, { repsDone: 12 }),
      sent(3, "round", 347_777),
    ],
  ],
];

/** What is there in the end, without the ids that are made anew each time. */
async function outcome(hall: Hall, test: Code) {
  const attempts = fromHeats(hall).map(({ athleteId, slot, variant, seen, void: ended, at }) => ({
    ...{ athleteId, slot, variant, seen, at },
    ended,
  }));
  const marks = marksOfDay(hall.desk.store.db, hall.dayId).map(({ seq, ...mark }) => mark);
  const lanes = (await lanesOf(hall, test)).map(({ idle, results, ...lane }) => ({
    ...lane,
    results: results.map(({ seen }) => seen),
  }));
  return { attempts, marks, lanes };
}

type Disturb = (hall: Hall, last: () => Promise<unknown>) => Promise<Hall>;

async function run(
  test: Code,
  lanes: number,
  script: readonly (Sent | "undo")[],
  name: string,
  disturb: Disturb,
) {
  let hall = await hallAt(test, join(folder, `${name}.sqlite`));
  const heatId = await startedHeat(hall, test, lanes);
  let elapsed = 0;
  let before: Sent | undefined;
  for (const step of script) {
    const atMs = step === "undo" ? elapsed + 900 : step.atMs;
    // A trial's start signal is told ahead of it.
    const now = Math.max(elapsed, step !== "undo" && step.kind === "go" ? atMs - 3000 : atMs);
    hall.clock.tick(now - elapsed);
    elapsed = now;
    const id = crypto.randomUUID();
    const undone = before;
    async function send(): Promise<unknown> {
      if (step !== "undo") return hall.heat.tap({ heatId, by, events: [step] });
      return hall.heat.undo({ heatId, eventId: undone?.id ?? "", id, by });
    }
    await send();
    hall = await disturb(hall, send);
    before = step === "undo" ? undefined : step;
  }
  const result = await outcome(hall, test);
  expect(hall.faults).toEqual([]);
  hall.desk.close();
  return result;
}

/** Killed without closing anything and started again on the same file; the window then sends its last tap again. */
function killed(name: string): Disturb {
  return async (hall, last) => {
    const desk = testDesk(join(folder, `${name}.sqlite`), hall.clock);
    Object.assign(hall, desk, { heat: desk.as("station").heat });
    await last();
    return hall;
  };
}

test.each(heats)(
  "%s: killed and started again after every tap, the heat comes to the same",
  async (code, lanes, script) => {
    const calm = await run(code, lanes, script, "calm", async (hall) => hall);
    const disturbed = await run(code, lanes, script, "disturbed", killed("disturbed"));
    expect(calm.attempts.length).toBeGreaterThan(lanes / 2);
    expect(disturbed).toEqual(calm);
  },
);
