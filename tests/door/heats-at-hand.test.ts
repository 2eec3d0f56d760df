import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { removeDevice } from "../../electron/store/tables/devices.ts";
import { deviceAt } from "./devices-of-a-day.ts";
import { by, hallAt, sent } from "./heat-hall.ts";

/** The organiser's overview and the big screen know of every heat of a test, not of one alone. */

const leap = "vertical" as const;

/** Two walls and the table, each with a heat of its own; everybody but bib 4 agreed to be shown. */
async function threeHeats() {
  const hall = await hallAt(leap);
  const organiser = hall.as("organiser");
  for (const bib of [1, 2, 3, 4, 5, 6]) {
    const board = bib === 4 ? "hidden" : "bib";
    await organiser.people.setConsent({ athleteId: hall.idOf(bib), board, share: false });
  }
  const red = deviceAt(hall, "Red phone", leap);
  const blue = deviceAt(hall, "Blue phone", leap);
  const callers = { red: hall.from(red).heat, blue: hall.from(blue).heat, table: organiser.heat };
  const lanes = { red: 2, blue: 2, table: 1 };
  const ids: Record<string, string> = {};
  for (const [name, caller] of Object.entries(callers)) {
    const wanted = { test: leap, heatId: randomUUID(), lanes: lanes[name as keyof typeof lanes], by };
    // The oldest heat comes first.
    hall.clock.tick(1000);
    ids[name] = (await caller.gather(wanted)).heatId;
  }
  const overview = async () =>
    (await organiser.day.overview()).tests.map((each) => ({ test: each.test, heats: each.heats }));
  const heatsOnBoard = async () => (await hall.as("board").board.view()).heats;
  return { hall, red, callers, ids, overview, heatsOnBoard };
}

test("the overview names each heat of a test, who has it, and whom its lanes hold", async () => {
  const { hall, red, callers, ids, overview } = await threeHeats();
  const heats = (await overview()).find((each) => each.test === leap)?.heats;
  expect(heats).toHaveLength(3);
  expect(heats).toContainEqual({
    heatId: ids.red,
    who: "Red phone",
    isTable: false,
    state: "running",
    bibs: [1, 2],
  });
  expect(heats).toContainEqual({
    heatId: ids.blue,
    who: "Blue phone",
    isTable: false,
    state: "running",
    bibs: [3, 4],
  });
  expect(heats).toContainEqual({ heatId: ids.table, who: null, isTable: true, state: "running", bibs: [5] });
  for (const other of (await overview()).filter((each) => each.test !== leap))
    expect(other.heats).toEqual([]);
  // Whoever is done is held by no lane; a device that is gone leaves its heat to be seen.
  await callers.red.tap({ heatId: ids.red ?? "", by, events: [sent(1, "aside", 1)] });
  hall.desk.store.write([], (db) => removeDevice(db, red.id));
  const left = (await overview()).find((each) => each.test === leap)?.heats;
  expect(left).toContainEqual({ heatId: ids.red, who: null, isTable: false, state: "running", bibs: [2] });
  hall.desk.close();
});

test("the big screen shows every running heat's bibs, without those who hide, and none that only they are in", async () => {
  const { hall, callers, ids, heatsOnBoard } = await threeHeats();
  expect(await heatsOnBoard()).toEqual([{ test: leap, heats: [[1, 2], [3], [5]] }]);
  await callers.blue.tap({ heatId: ids.blue ?? "", by, events: [sent(1, "aside", 1)] });
  expect(await heatsOnBoard()).toEqual([{ test: leap, heats: [[1, 2], [5]] }]);
  await hall.as("organiser").board.hide({ hidden: true });
  expect(await heatsOnBoard()).toEqual([]);
  hall.desk.close();
});

test("a heat that waits for its start is in the overview, and on the big screen by its calls alone", async () => {
  const hall = await hallAt("core");
  const { heat, day } = hall.as("organiser");
  const { heatId } = await heat.gather({ test: "core", heatId: randomUUID(), lanes: 2, by });
  const told = (await day.overview()).tests.find(({ test }) => test === "core")?.heats;
  expect(told).toEqual([{ heatId, who: null, isTable: true, state: "gathering", bibs: [1, 2] }]);
  expect((await hall.as("board").board.view()).heats).toEqual([]);
  hall.desk.close();
});
