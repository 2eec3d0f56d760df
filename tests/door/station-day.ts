import { randomUUID } from "node:crypto";
import { lengthOfMillimetres } from "../../electron/domain/length.ts";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { defaultParameters } from "../../electron/domain/tests/registry.ts";
import { type EntrantState, setEntrant } from "../../electron/store/tables/entrants.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { type TestDesk, testDesk } from "./desk.ts";
import { addPeople, openDay } from "./people-of-a-day.ts";

type Caller = ReturnType<TestDesk["as"]>;
export type Entry = Parameters<Caller["station"]["enter"]>[0];

export interface StationDay extends TestDesk {
  readonly dayId: number;
  readonly station: Caller["station"];
  readonly organiser: Caller["station"];
  /** Athlete of a bib; bib 1 is the first who checked in. */
  readonly idOf: (bib: number) => number;
}

const names = ["Ada Rill", "Bo Crank", "Cy Loop", "Di Stomp", "Ed Whirl", "Flo Dash"];

/** An open day with six invented athletes, checked in a minute apart, bibs 1 to 6. */
export async function stationDay(file?: string): Promise<StationDay> {
  const desk = testDesk(file);
  const dayId = await openDay(desk);
  const people = names.map((name, index) => ({ league: "Foundry Town", name, number: `0${index + 1}` }));
  const ids = addPeople(desk, people, dayId);
  for (const [index, athleteId] of ids.entries()) {
    setState(desk, dayId, athleteId, "testing", index + 1);
    desk.clock.pass(1);
  }
  return {
    ...desk,
    dayId,
    station: desk.as("station").station,
    organiser: desk.as("organiser").station,
    idOf: (bib) => ids[bib - 1] ?? 0,
  };
}

export function setState(
  { desk }: TestDesk,
  dayId: number,
  athleteId: number,
  state: EntrantState,
  bib: number | null,
): void {
  const since = desk.now().toISOString();
  desk.store.write(["entrants"], (db) => setEntrant(db, dayId, { athleteId, state, bib, since }));
}

/** A mark from before, under the handbook's parameters. */
export function past(
  day: StationDay,
  bib: number,
  test: TestCode,
  value: number,
  date: string,
  variant = "",
) {
  pastOf(day, day.idOf(bib), test, value, date, variant);
}

/** The same of somebody without a bib. */
export function pastOf(
  { desk }: TestDesk,
  athleteId: number,
  test: TestCode,
  value: number,
  date: string,
  variant = "",
) {
  const name = fingerprint(test, variant, defaultParameters(test));
  desk.store.write(["people"], (db) =>
    addPastMark(db, { athleteId, fingerprint: name, date, test, variant, value }),
  );
}

/** One attempt under a new ticket, entered by QA who is not sure. */
export function entry(athleteId: number, test: TestCode, seen: unknown, more: Partial<Entry> = {}): Entry {
  const variant = test === "push-up" ? "full" : "";
  return { athleteId, test, variant, attempts: [ticket(seen)], by: "QA", sure: false, ...more };
}

export function ticket(seen: unknown): { id: string; seen: unknown } {
  return { id: randomUUID(), seen };
}

export const reps = (done: number, offAtEnd = 0) => ({ how: "tally", reps: done, offAtEnd });
export const trial = (direction: "cw" | "ccw", laps: number, extra: number, touches = 0) => ({
  direction,
  laps,
  extra,
  touches,
});
/** A trial of the leap by millimetres. */
export const jump = (standing: number, touched: number) => ({
  standingReach: lengthOfMillimetres(standing),
  touchReach: lengthOfMillimetres(touched),
});
export const hold = (seconds: number) => ({ held: seconds * 1000 });

/** Enters one plain attempt of each test before `test`, so that it is its turn. */
export async function bringTo(day: StationDay, bib: number, test: TestCode): Promise<void> {
  const athleteId = day.idOf(bib);
  const order: [TestCode, unknown[]][] = [
    ["push-up", [reps(20)]],
    ["agility", [trial("cw", 7, 3), trial("ccw", 7, 1)]],
    ["vertical", [jump(2100, 2500)]],
    ["core", [hold(90)]],
  ];
  for (const [code, seen] of order) {
    if (code === test) return;
    await day.station.enter(entry(athleteId, code, null, { attempts: seen.map(ticket), sure: true }));
  }
}
