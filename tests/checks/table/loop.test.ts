import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { PlaceAmongOthers } from "../../../electron/api/place/among.ts";
import { placesOn } from "../../../electron/api/place/place.ts";
import { newKey, readKey } from "../../../electron/api/reference/signature.ts";
import { protocolOf, type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import { merge } from "../../../electron/reference/merge.ts";
import { dayById } from "../../../electron/store/tables/days.ts";
import { type BoardDay, boardDay } from "../../door/board-day.ts";
import { hold, reps } from "../../door/station-day.ts";
import { normals } from "../chance.ts";
import { bundleOfHall, hallsOf, ownVariation, shown, truePlace } from "./sport.ts";

/**
 * The whole loop: sixty invented halls write their bundles, the command makes one signed table of them, a hall that was
 * not among them brings it in, and its athletes' pages and cards say where their results stand. Of the invented sport the
 * true places are known, so that it can be counted how often a place holds the true one.
 */
const folder = mkdtempSync(join(tmpdir(), "tapeline-loop-"));
const sent = join(folder, "sent");
const out = join(folder, "table.zip");
/** The sixty-first hall: its athletes, and what they show on the day. */
const [hall = { athletes: [] }] = hallsOf(1, [100, 100], 61);
const draw = normals(611);
const marks = hall.athletes.map(({ truth }) =>
  Object.fromEntries(testCodes.map((code) => [code, shown(truth[code], ownVariation[code], draw)])),
) as Record<TestCode, number>[];
let day: BoardDay;

beforeAll(async () => {
  mkdirSync(sent);
  hallsOf(60, [30, 120], 60).forEach((each, index) => {
    writeFileSync(join(sent, `hall-${index + 1}.zip`), bundleOfHall(each, 6000 + index));
  });
  const key = readKey(newKey());
  if (key === undefined) throw new Error("No key was made.");
  const signing = { key, publisher: "The harbour table", made: "2026-11-01", validUntil: "2028-11-01" };
  const keptBack: string[] = [];
  const telling = { keptBack: (name: string) => keptBack.push(name), progress: () => undefined };
  await merge({ folder: sent, out, kept: null, signing, page: null }, telling);
  expect(keptBack).toEqual([]);

  day = await boardDay(
    hall.athletes.map(({ category, ageBand }, index) => {
      const birthYear = 2026 - Number(ageBand.slice(0, 2)) - (index % 5);
      return { league: "Alder", name: `Skater ${index}`, category, birthYear, share: false };
    }),
  );
  const { reference } = day.as("organiser");
  const bytes = new Uint8Array(readFileSync(out));
  const brought = await reference.bring(new Blob([bytes]).stream() as unknown as Blob);
  if (!("tableId" in brought)) throw new Error("It was not taken for a table.");
  await reference.addTable({ tableId: brought.tableId });
});

afterAll(() => rmSync(folder, { recursive: true }));

/** True if a place holds the true one among those whom it says that it is among. */
function holds(place: PlaceAmongOthers, index: number, code: TestCode): boolean {
  const { category, ageBand, truth } = hall.athletes[index] ?? expect.fail("Nobody.");
  const among = {
    category: place.group === "mixed" ? null : category,
    ageBand: place.ages === null ? null : ageBand,
  };
  const place100 = truePlace(code, truth[code], ownVariation[code], among);
  return place.low <= place100 && place100 <= place.high;
}

// Bar: at least 95 %.
test("the places of a hall that was not in the table hold the true ones", () => {
  const { db } = day.desk.store;
  const placeOf = placesOn(db, dayById(db, day.dayId) ?? expect.fail("There is no day."));
  const counted = { held: 0, all: 0, width: 0, among: new Map<string, number>() };
  for (const code of testCodes) {
    const [variant = ""] = protocolOf(code).variants;
    for (const [index, each] of marks.entries()) {
      const athleteId = day.ids[index] ?? 0;
      const place = placeOf({ athleteId, test: code, variant, value: each[code] });
      if (place === null) continue;
      expect(place).toMatchObject({ origin: "The harbour table", halls: expect.any(Number) });
      const who = `${place.group}, ${place.ages === null ? "any age" : "own age"}`;
      counted.among.set(who, (counted.among.get(who) ?? 0) + 1);
      counted.all += 1;
      counted.width += place.high - place.low;
      if (holds(place, index, code)) counted.held += 1;
    }
  }
  console.log(
    `60 halls: ${counted.held} of ${counted.all} places hold the true one, ${Math.round(counted.width / counted.all)} of a hundred wide (${[...counted.among].map((each) => each.join(": ")).join("; ")})`,
  );
  expect(counted.all).toBe(testCodes.length * marks.length);
  expect(counted.held / counted.all).toBeGreaterThanOrEqual(0.95);
});

test("an athlete's page and card say the same place, among how many results of how many halls", async () => {
  const index = 7;
  const shownOf = marks[index] ?? expect.fail("Nobody.");
  await day.enter(index + 1, "push-up", reps(shownOf["push-up"]));
  await day.enter(index + 1, "core", hold(shownOf.core));
  const athleteId = day.ids[index] ?? 0;
  const organiser = day.as("organiser");
  const page = await organiser.people.get({ athleteId });
  const { cards } = await organiser.cards.list({ which: { kind: "athlete", athleteId }, lengths: "cm" });
  const places = JSON.stringify([page, cards]).match(/"place":\{[^{}]*("ages":\{[^{}]*\})?[^{}]*\}/g) ?? [];
  const told = places.map((text) => JSON.parse(text.slice('"place":'.length)) as PlaceAmongOthers);
  expect(told).toHaveLength(4);
  expect(new Set(told.map((place) => JSON.stringify(place))).size).toBe(2);
  for (const place of told)
    expect(place).toMatchObject({ origin: "The harbour table", n: expect.any(Number) });
});
