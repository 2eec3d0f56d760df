import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, expect, test } from "vitest";
import { heldSchema } from "../../electron/api/people/held-schema.ts";
import { rulesVersion } from "../../electron/domain/tests/registry.ts";
import { heldTables } from "../../electron/store/erasure/held-tables.ts";
import { connectionOf } from "../store/connection.ts";
import { fillHall, type Invented } from "../store/hall.ts";
import { type TestDesk, testDesk } from "./desk.ts";
import { hallAt, sent, startedHeat } from "./heat-hall.ts";
import { entry, past, reps, trial } from "./station-day.ts";

let made: TestDesk;
beforeEach(() => {
  made = testDesk();
});
afterEach(() => {
  expect(made.faults).toEqual([]);
  made.desk.close();
});

const ada: Invented = {
  ...{ sign: "qa", league: "Foundry Town", name: "Ada Rill", number: "9041", birthYear: 1991 },
  ...{ category: "open", guardianConsent: false, board: "name", share: true, asked: true, bib: 31 },
  ...{ reps: 20, corrected: true, heat: true, past: true },
};
const bo: Invented = { ...ada, sign: "zb", name: "Bo Crank", number: "12", birthYear: 1985, bib: 2 };

/** The first test of the day: nothing was before it. */
const first = { position: 1, rest_minutes: null };

test("everything in every table is in the file, under keys that stay", async () => {
  const { ids } = made.desk.store.write([], (db) => fillHall(db, [ada, bo]));
  const [athleteId = 0] = ids;
  const held = await made.as("organiser").people.held({ athleteId });
  const at = "2026-11-14T09:00:00.000Z";
  expect(held).toEqual({
    ...{ format: "tapeline-held", version: 1, made_at: made.clock.at.toISOString(), invented: false },
    person: {
      ...{ id: athleteId, league: "Foundry Town", name: "Ada Rill", number: "9041" },
      ...{ birth_year: 1991, category: "open" },
    },
    consents: { board: "name", share: true, guardian_consent: false, asked_at_the_table: true },
    days: [
      {
        ...{ date: "2026-11-14", title: "A day", state: "open" },
        entry: { state: "testing", bib: 31, since: at },
        left_out: [{ test: "endurance", kind: "skip", reason: "qa is late", decided_by: "QA", at }],
        calls: [{ test: "core", at }],
        absences: [{ id: "qa-away", test: "core", at, noted_by: "QA" }],
        attempts: [
          {
            ...{ id: "qa-1", test: "push-up", at, order: 1, variant: "full", slot: "" },
            ...{
              seen: { how: "tally", reps: 20, offAtEnd: 0 },
              entered_by: "QA",
              source: "station",
              performed_at: at,
            },
            ...{ note: "qa was cold", replaces: null, void: { reason: "qa: a slip", by: "QA", at } },
            ...{ heat: null, result: null },
          },
          {
            ...{ id: "qa-2", test: "push-up", at, order: 2, variant: "full", slot: "" },
            ...{
              seen: { how: "tally", reps: 21, offAtEnd: 0 },
              entered_by: "QA",
              source: "station",
              performed_at: at,
            },
            ...{ note: "", replaces: "qa-1", void: null, heat: null, result: null },
          },
          {
            ...{ id: "heat.heat-1.1.qa", test: "core", at, order: 5, variant: "", slot: "" },
            ...{
              seen: { held: 60_000 },
              entered_by: "QA",
              performed_at: at,
              source: "heat",
              note: "",
              replaces: null,
              void: null,
              heat: "heat-1",
              result: "mark",
            },
          },
        ],
        marks: [
          {
            ...{ test: "push-up", variant: "full", state: "complete", value: 21, unit: "reps" },
            protocol: "push-up/full beatsPerRep=2 bpm=40 missesToStop=3",
            ...{ detail: { state: "complete", value: 21 }, order: 2, rules: rulesVersion, ...first },
          },
          {
            ...{ test: "core", variant: "", state: "complete", value: 60, unit: "s" },
            protocol: "core cycle=240",
            ...{
              detail: { state: "complete", value: 60 },
              order: 5,
              rules: rulesVersion,
              position: 2,
              rest_minutes: 0,
            },
          },
        ],
        heats: [
          {
            ...{ id: "heat-1", test: "core", gathered_at: at, started_at: at, ended_at: at },
            ...{ ending: "done", reason: "", lane: 1, variant: "" },
            taps: [
              {
                ...{ id: "qa-tap", order: 1, kind: "stop", at_ms: 60_000, detail: {} },
                ...{ tapped_by: "QA", at },
              },
            ],
          },
        ],
      },
    ],
    past_marks: [
      { date: "2025-10-01", test: "core", variant: "", protocol: "core cycle=240", value: 90, unit: "s" },
    ],
    past_removed: [],
    study_readings: [],
    changes: [],
  });
  expect(heldSchema.parse(held)).toEqual(held);
  // Whoever adds a table that says something about athletes gives it a place in the file above.
  expect(heldTables).toHaveLength(14);
});

test("nothing of anybody else is in it, also not a name in a note or whose attempt was corrected", async () => {
  const { ids, dayId } = made.desk.store.write([], (db) => fillHall(db, [ada, bo]));
  const [adaId = 0] = ids;
  const { db } = made.desk.store;
  connectionOf(db).exec(`
    INSERT INTO attempt SELECT NULL, 'moved', day_id, ${adaId}, 'agility', '', 'cw', seen, 'QA', 'was BO  CRANK, not Ada Rill',
      'station', at, 'zb-1', NULL, NULL, at FROM attempt WHERE id = 'zb-1';
    INSERT INTO void VALUES ('moved', 'Bo Crank stood there', 'QA', '2026-11-14T09:00:00.000Z');
    INSERT INTO left_out VALUES (${dayId}, ${adaId}, 'agility', 'skip', 'helps Bo Crank', 'QA', '2026-11-14T09:00:00.000Z');
  `);
  const held = await made.as("organiser").people.held({ athleteId: adaId });
  expect(held.days[0]?.attempts.at(-1)).toMatchObject({
    ...{ note: "was […], not Ada Rill", replaces: null, void: { reason: "[…] stood there" } },
  });
  const text = JSON.stringify(held);
  for (const theirs of ["zb", "Bo Crank", "1985", `"bib":2`]) expect(text).not.toContain(theirs);
});

test("a heat gives each athlete their own lane and taps", async () => {
  const hall = await hallAt("core");
  const heatId = await startedHeat(hall, "core", 2);
  hall.clock.tick(70_000);
  const stops = [sent(1, "stop", 61_000), sent(2, "stop", 62_500)];
  await hall.heat.tap({ heatId, by: "QA", events: stops });
  for (const lane of [1, 2]) {
    const held = await hall.as("organiser").people.held({ athleteId: hall.idOf(lane) });
    expect(held.days[0]?.heats.map((heat) => [heat.lane, heat.taps.map(({ id }) => id)])).toEqual([
      [lane, [stops[lane - 1]?.id]],
    ]);
    expect(heldSchema.parse(JSON.parse(JSON.stringify(held)))).toEqual(held);
  }
  hall.desk.close();
});

test("marks are in the units of the sheets, whole and in parts", async () => {
  const hall = await hallAt("agility");
  past(hall, 1, "vertical", 43.1 * 200, "2026-02-01");
  await hall.station.enter(entry(hall.idOf(1), "agility", trial("cw", 7, 3, 1), { sure: true }));
  const { days, past_marks } = await hall.as("organiser").people.held({ athleteId: hall.idOf(1) });
  expect(past_marks).toMatchObject([{ test: "vertical", value: 43.1, unit: "cm" }]);
  const marks = days[0]?.marks.map(({ test, state, value, unit }) => [test, state, value, unit]);
  expect(marks).toEqual([
    ["push-up", "complete", 20, "reps"],
    ["agility", "incomplete", null, "landings"],
  ]);
  hall.desk.close();
});

test("of somebody who only stands on a list, that is all there is", async () => {
  const { athleteId } = await walkUp();
  const held = await made.as("organiser").people.held({ athleteId });
  expect(held.days).toMatchObject([
    { entry: { state: "testing", bib: 1 }, attempts: [], marks: [], heats: [] },
  ]);
  expect(held.past_marks).toEqual([]);
  const erased = { erasureId: randomUUID(), athleteId, typed: "Ada", by: "QA" };
  await made.as("organiser").people.erase(erased);
  await expect(made.as("organiser").people.held({ athleteId })).rejects.toMatchObject({ code: "NOT_FOUND" });
});

async function walkUp() {
  const organiser = made.as("organiser");
  await organiser.day.create({ date: "2026-11-14", title: "A day" });
  await organiser.day.open();
  const answers = { bib: null, leaveOut: [], share: false, guardianConsent: false, by: "QA" };
  const who = { league: "Alder", name: "Ada", number: "", birthYear: null };
  return organiser.checkIn.walkUp({ ...answers, ...who, board: "bib" });
}

test("what is entered later is in the next file", async () => {
  const hall = await hallAt("push-up");
  const { people } = hall.as("organiser");
  const before = await people.held({ athleteId: hall.idOf(1) });
  await hall.station.enter(entry(hall.idOf(1), "push-up", reps(20)));
  const after = await people.held({ athleteId: hall.idOf(1) });
  expect(after.days[0]?.attempts).toHaveLength((before.days[0]?.attempts.length ?? 0) + 1);
  hall.desk.close();
});
