import type { Language } from "../../domain/languages.ts";
import { defaultParameters, testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { type Athlete, athleteByIdentity } from "../../store/tables/athletes.ts";
import { addDayEvent } from "../../store/tables/day-events.ts";
import { addDay, type Day, setDayState } from "../../store/tables/days.ts";
import { admitAthlete } from "../check-in/admission.ts";
import { markNoShow, withdrawAthlete } from "../check-in/attendance.ts";
import { requireOpenDay } from "../door/at-hand.ts";
import { say } from "../door/words.ts";
import type { ReadSheet } from "../intake/read.ts";
import { planSheet } from "../intake/sheet.ts";
import { queueOf } from "../station/runners.ts";
import { call, skip } from "../station/turns.ts";
import { type Arrival, type Cast, openSince } from "./demo-floor.ts";
import { planDemo } from "./demo-plan.ts";
import { lineOf } from "./lines.ts";

/** The demo's sheets as read, and the events so far. */
export interface DemoScript {
  readonly roster: ReadSheet;
  readonly past: ReadSheet;
  /** The results of each batch of the cast. */
  readonly results: readonly ReadSheet[];
  readonly cast: Cast;
}

/** The moment that the demo shows: an ISO 8601 day, the instant, and the hall's language. */
export interface Now {
  readonly language: Language;
  readonly today: string;
  readonly instant: Date;
}

/** Initials of the demo's volunteers and organiser. */
const by = "DEMO";

/**
 * Fills an empty store with a day that is being held, by the same steps as any day: sheets, check-in, results, calls.
 * Part of the caller's transaction.
 */
export function fillDemo(db: WritableDb, script: DemoScript, now: Now): void {
  const at = (minute: number) => minuteOfDemo(now.instant, minute);
  const day = openDay(db, now);
  takeIn(db, script.roster, at(-60));
  takeIn(db, script.past, at(-60));
  planDemo(db, day, at(0));
  for (const arrival of script.cast.arrivals) checkIn(db, day, arrival, at(arrival.minute));
  for (const [index, { minute }] of script.cast.batches.entries()) {
    const sheet = script.results[index];
    if (sheet !== undefined) takeIn(db, sheet, at(minute));
  }
  leaveEarly(db, day, script.cast, at, now.language);
  callSome(db, day, at);
}

/** Returns the instant (ISO 8601) of a minute since the demo's day was opened. */
export function minuteOfDemo(instant: Date, minute: number): string {
  return new Date(instant.getTime() - (openSince - minute) * 60_000).toISOString();
}

function openDay(db: WritableDb, { today: date, instant, language }: Now): Day {
  const protocols = testCodes.map((test) => ({ test, parameters: defaultParameters(test) }));
  const title = say(sentence("day.demoTitle"), language);
  const id = addDay(db, { date, title, restMinutes: 5 }, protocols);
  setDayState(db, id, "open");
  addDayEvent(db, id, { ...lineOf({ now: () => instant }, "opened"), on: date });
  return requireOpenDay(db);
}

/** Imports one of the demo's own sheets whole; a row that is not imported is a fault of ours. */
function takeIn(db: WritableDb, sheet: ReadSheet, at: string): void {
  const { taking, keptBack, questions } = planSheet(db, sheet, at);
  const [asked] = questions;
  if (asked !== undefined)
    throw new Error(`The demonstration's ${sheet.kind} asks who ${asked.said.name} is.`);
  const [outside] = keptBack;
  if (outside !== undefined) {
    throw new Error(`The demonstration's ${sheet.kind}, line ${outside.line}: ${say(outside.reason)}`);
  }
  taking.write(db, at);
}

function checkIn(db: WritableDb, day: Day, { who, leaveOut }: Arrival, at: string): void {
  const { id, board, share, guardianConsent } = athleteOf(db, who);
  admitAthlete(db, day, id, { bib: null, leaveOut: [...leaveOut], board, share, guardianConsent, by }, at);
}

/** Finds the athlete of the cast's `who`: league, number and name, one per line. */
function athleteOf(db: ReadableDb, who: string): Athlete {
  const [league = "", number = "", name = ""] = who.split("\n");
  const athlete = athleteByIdentity(db, league, number, name);
  if (athlete === undefined) throw new Error(`The demonstration's roster lacks ${name}.`);
  return athlete;
}

function leaveEarly(
  db: WritableDb,
  day: Day,
  cast: Cast,
  at: (minute: number) => string,
  language: Language,
): void {
  const { noShow, withdrawn, skips } = cast;
  if (noShow !== undefined) markNoShow(db, day, athleteOf(db, noShow).id, at(openSince - 30));
  for (const { who, minute } of withdrawn) withdrawAthlete(db, day, athleteOf(db, who).id, at(minute));
  if (skips.who === undefined) return;
  const reason = say(sentence("day.demoSkip"), language);
  const decision = { reason, decidedBy: by, at: at(openSince - 20) };
  skip(db, day, { athleteId: athleteOf(db, skips.who).id, test: skips.test }, decision);
}

/** Calls and their age in minutes; one is old enough to raise a question. A scene of the demo, so it names tests. */
const called = [
  ["vertical", 7],
  ["agility", 2],
  ["core", 1],
  ["core", 0],
  ["endurance", 3],
] as const;

/** Calls the athletes who have waited longest, as a station does. */
function callSome(db: WritableDb, day: Day, at: (minute: number) => string): void {
  for (const [test, minutesAgo] of called) {
    const next = queueOf(db, day, test, at(openSince)).find(({ calledAt }) => calledAt === null);
    if (next === undefined) continue;
    call(db, day, next.athleteId, { test, holder: null, at: at(openSince - minutesAgo) });
  }
}
