import { randomUUID } from "node:crypto";
import Papa from "papaparse";
import { expect } from "vitest";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { connectionOf } from "../store/connection.ts";
import { type TestDesk, testDesk } from "./desk.ts";
import { sent } from "./heat-hall.ts";
import { addPeople, openDay } from "./people-of-a-day.ts";
import { entry, jump, past, reps, type StationDay, setState, ticket, trial } from "./station-day.ts";

/** The worked day, with the ids that its tests need. */
export interface WorkedDay extends StationDay {
  readonly summary: ReturnType<TestDesk["as"]>["summary"];
  readonly leagueIds: { readonly foundry: number; readonly quarry: number };
}

export const foundry = "Foundry Town";
export const quarry = "Quarry Lane";

/** Bibs 1 to 6, and Gil, who never comes. */
const people = [
  { league: foundry, name: "Ada Rill", number: "01" },
  { league: foundry, name: "Bo Crank", number: "02" },
  { league: foundry, name: "Cy Loop", number: "03" },
  { league: quarry, name: "Di Stomp", number: "04" },
  { league: quarry, name: "Ed Whirl", number: "05" },
  { league: quarry, name: "Flo Dash", number: "06" },
  { league: quarry, name: "Gil Spin", number: "07" },
];

/** An open day of two leagues on which nothing has been measured, at 9:10. */
export async function emptyDay(): Promise<WorkedDay> {
  const desk = testDesk();
  const dayId = await openDay(desk);
  const ids = addPeople(desk, people, dayId);
  for (const [index, athleteId] of ids.slice(0, 5).entries()) {
    setState(desk, dayId, athleteId, "testing", index + 1);
  }
  setState(desk, dayId, ids[5] ?? 0, "not-testing", null);
  desk.clock.at = new Date("2026-11-14T09:10:00Z");
  const { summary } = desk.as("organiser");
  const told = await summary.get({});
  const idOf = (league: string) => told?.leagues.find(({ name }) => name === league)?.id ?? 0;
  return {
    ...{ ...desk, dayId, summary, idOf: (bib: number) => ids[bib - 1] ?? 0 },
    station: desk.as("station").station,
    organiser: desk.as("organiser").station,
    leagueIds: { foundry: idOf(foundry), quarry: idOf(quarry) },
  };
}

/** A small day, closed, of which every figure can be worked out by hand; the comments of its tests do. */
export async function workedDay(): Promise<WorkedDay> {
  const day = await emptyDay();
  history(day);
  await pushUps(day);
  await jumps(day);
  await planks(day);
  await circuits(day);
  setState(day, day.dayId, day.idOf(5), "withdrawn", 5);
  await day.as("organiser").day.close({ dayId: day.dayId });
  return day;
}

function history(day: WorkedDay): void {
  past(day, 1, "push-up", 20, "2026-04-11", "full");
  past(day, 2, "push-up", 24, "2026-04-11", "full");
  past(day, 3, "push-up", 18, "2026-04-11", "full");
  past(day, 1, "vertical", 8000, "2026-04-11");
  past(day, 1, "endurance", 372_000, "2026-04-11");
}

/** Entered at 9:10:00, 9:13:00, 9:15:30, 9:50:00 (after a pause) and 9:54:00; corrected at 9:56. */
async function pushUps(day: WorkedDay): Promise<void> {
  await key(day, 1, "push-up", [reps(26)]);
  day.clock.pass(3);
  await key(day, 2, "push-up", [reps(27, 3)]);
  day.clock.pass(2.5);
  await key(day, 3, "push-up", [reps(15)], "RS");
  day.clock.pass(34.5);
  const first = entry(day.idOf(4), "push-up", reps(30), { by: "RS" });
  await day.station.enter(first);
  day.clock.pass(4);
  await key(day, 5, "push-up", [reps(22)], "RS");
  day.clock.pass(2);
  const replaces = { attemptId: first.attempts[0]?.id ?? "", reason: "Miscounted" };
  await day.station.enter(entry(day.idOf(4), "push-up", reps(31), { by: "QA", replaces }));
}

async function jumps(day: WorkedDay): Promise<void> {
  await key(day, 1, "agility", [trial("cw", 7, 3, 2), trial("ccw", 7, 1)]);
  await key(day, 2, "agility", [trial("cw", 7, 0)]);
  await day.organiser.skip({ athleteId: day.idOf(3), test: "agility", reason: "Has a train", by: "OR" });
  const at = day.desk.now().toISOString();
  day.desk.store.write(["entrants", "attempts"], (db) => {
    recordAttempt(db, day.dayId, {
      ...{ id: randomUUID(), athleteId: day.idOf(1), test: "vertical", variant: "", seen: jump(2100, 2520) },
      ...{ enteredBy: "sheet", note: "", source: "sheet", at, replaces: null },
    });
  });
  day.desk.store.write(["entrants"], (db) => {
    const sql = `INSERT INTO left_out (day_id, athlete_id, test, kind, reason, decided_by, at)
      VALUES (?, ?, 'vertical', 'readiness', '', 'CH', ?)`;
    connectionOf(db).prepare<[number, number, string], never>(sql).run(day.dayId, day.idOf(3), at);
  });
}

/** Ada and Cy side by side on one clock. */
async function planks(day: WorkedDay): Promise<void> {
  day.clock.pass(6);
  const { heat } = day.as("station");
  const { heatId } = await heat.gather({ test: "core", heatId: randomUUID(), lanes: 2, by: "RS" });
  const { elapsedMs } = await heat.start({ heatId, startedAgoMs: 0 });
  day.clock.tick(100_000 - elapsedMs);
  const view = await heat.view({ test: "core" });
  const laneOf = (bib: number) => view.heat?.lane.find(({ who }) => who.bib === bib)?.lane ?? 0;
  const stops = [sent(laneOf(3), "stop", 61_200), sent(laneOf(1), "stop", 95_400)];
  // A second press of one finger changes nothing, and must not make the plank longer.
  await heat.tap({ heatId, by: "RS", events: [...stops, sent(laneOf(3), "stop", 99_000)] });
  await heat.end({ heatId, by: "RS" });
}

async function circuits(day: WorkedDay): Promise<void> {
  day.clock.pass(6);
  await key(day, 1, "endurance", [{ finished: true, time: 366_800 }]);
  day.clock.pass(7);
  await key(day, 3, "endurance", [{ finished: false, roundsDone: 2, repsDone: 15 }]);
}

/** Enters plain attempts of one test for a bib. */
export async function key(
  day: WorkedDay,
  bib: number,
  test: Parameters<typeof entry>[1],
  seen: unknown[],
  by = "QA",
): Promise<void> {
  const more = { attempts: seen.map(ticket), by, sure: true };
  await day.station.enter(entry(day.idOf(bib), test, null, more));
}

/** A sheet's rows as an independent reader of CSV gives them. */
export function rowsOfSheet(text: string): Readonly<Record<string, string>>[] {
  const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  expect(errors).toEqual([]);
  return data;
}
