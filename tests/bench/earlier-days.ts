import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import {
  defaultParameters,
  protocolOf,
  rulesVersion,
  testCodes,
} from "../../electron/domain/tests/registry.ts";
import { addAthlete, leagueNamed } from "../../electron/store/tables/athletes.ts";
import { addDay, setDayState } from "../../electron/store/tables/days.ts";
import { setEntrant } from "../../electron/store/tables/entrants.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import type { BoardDay } from "../door/board-day.ts";
import { hold, jump, reps, trial } from "../door/station-day.ts";
import { connectionOf } from "../store/connection.ts";

/** What lies behind a day: so many results of each test and athlete, so many days apart. */
export interface Earlier {
  readonly name: string;
  readonly days: number;
  readonly apart: number;
  /** From a sheet of earlier results, not from days that were held here. */
  readonly imported?: boolean;
  /** Only the last so many days are of the athletes of today; the ones before are of others, as many days each. */
  readonly own?: number;
}

/** What is seen of an athlete's test; `at` moves it a little, so that no two days are alike. */
function seenOf(at: number) {
  return {
    "push-up": [reps(17 + (at % 9))],
    agility: [trial("cw", 6, at % 4), trial("ccw", 6, at % 3)],
    vertical: [jump(2100, 2490 + 5 * (at % 11))],
    core: [hold(80 + 3 * (at % 30))],
    endurance: [{ finished: true, time: 365_000 + 100 * ((at * 37) % 160) }],
  } as const;
}

const newest = Date.parse("2026-11-07T00:00:00Z");
const dateOf = (back: number, apart: number) =>
  new Date(newest - back * apart * 86_400_000).toISOString().slice(0, 10);

/** Fills a store with what lies behind its day, oldest first; returns the number of results. */
export function fillEarlier(day: BoardDay, earlier: Earlier): number {
  const { days, apart, own = days } = earlier;
  let others: readonly number[] = [];
  for (let back = days - 1; back >= 0; back -= 1) {
    const isOwn = back < own;
    if (!isOwn && (days - 1 - back) % own === 0) others = invite(day, back);
    const ids = isOwn ? day.ids : others;
    if (earlier.imported === true) importMarks(day, ids, dateOf(back, apart), back);
    else holdDay(day, ids, dateOf(back, apart), back);
  }
  return days * day.ids.length * testCodes.length;
}

function invite({ desk, ids }: BoardDay, back: number): number[] {
  return desk.store.write([], (db) => {
    const leagueId = leagueNamed(db, `League ${back}`);
    return ids.map((_id, index) =>
      addAthlete(db, {
        leagueId,
        ...{ name: `Guest ${back} ${index}`, number: String(index), birthYear: 1995, category: "women" },
        ...{ guardianConsent: false, board: "bib", share: true, asked: true },
      }),
    );
  });
}

/** A closed day on which all of them did all tests, with attempts and marks as they would have been entered. */
function holdDay({ desk, dayId: today }: BoardDay, ids: readonly number[], date: string, back: number): void {
  const protocols = testCodes.map((test) => ({ test, parameters: defaultParameters(test) }));
  desk.store.write([], (db) => {
    const connection = connectionOf(desk.store.db);
    // One day at a time is held: today's makes room while an earlier one is written.
    setDayState(db, today, "closed");
    const dayId = addDay(db, { date, title: "Earlier", restMinutes: 5 }, protocols);
    setDayState(db, dayId, "closed");
    const attempt = connection.prepare<unknown[], never>(
      `INSERT INTO attempt (id, day_id, athlete_id, test, variant, slot, seen, entered_by, note, source, at, performed)
       VALUES (?, ?, ?, ?, ?, ?, ?, 'QA', '', 'station', ?, ?)`,
    );
    const mark = connection.prepare<unknown[], never>(
      `INSERT INTO mark (athlete_id, test, variant, day_id, fingerprint, state, value, detail, seq, rules, position, rest_minutes)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    );
    for (const [index, athleteId] of ids.entries()) {
      setEntrant(db, dayId, { athleteId, state: "testing", bib: index + 1, since: `${date}T08:00:00.000Z` });
      const seen = seenOf(index * 7 + back * 3);
      for (const [at, test] of testCodes.entries()) {
        const {
          variants: [variant = ""],
          slot,
          score,
          attempt: schema,
        } = protocolOf(test);
        const when = `${date}T1${at}:00:00.000Z`;
        const parsed = seen[test].map((each) => schema.parse(each));
        let seq: number | bigint = 0;
        for (const [nth, each] of parsed.entries()) {
          const id = `${dayId}-${athleteId}-${test}-${nth}`;
          const text = JSON.stringify(each);
          seq = attempt.run(
            id,
            dayId,
            athleteId,
            test,
            variant,
            slot(each),
            text,
            when,
            when,
          ).lastInsertRowid;
        }
        const made = score(defaultParameters(test), parsed);
        if (made.state !== "complete") throw new Error(`An invented ${test} is not complete.`);
        const name = fingerprint(test, variant, defaultParameters(test));
        const detail = JSON.stringify(made);
        mark.run(
          ...[athleteId, test, variant, dayId, name, "complete", made.value, detail, Number(seq)],
          rulesVersion,
          at + 1,
          at === 0 ? null : 60,
        );
      }
    }
    setDayState(db, today, "open");
  });
}

function importMarks({ desk }: BoardDay, ids: readonly number[], date: string, back: number): void {
  desk.store.write(["people"], (db) => {
    for (const [index, athleteId] of ids.entries()) {
      const seen = seenOf(index * 7 + back * 3);
      for (const test of testCodes) {
        const {
          variants: [variant = ""],
          score,
          attempt,
        } = protocolOf(test);
        const made = score(
          defaultParameters(test),
          seen[test].map((each) => attempt.parse(each)),
        );
        if (made.state !== "complete") throw new Error(`An invented ${test} is not complete.`);
        const name = fingerprint(test, variant, defaultParameters(test));
        addPastMark(db, { athleteId, fingerprint: name, date, test, variant, value: made.value });
      }
    }
  });
}
