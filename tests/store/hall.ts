import type { ReadableDb, WritableDb } from "../../electron/store/connection/database.ts";
import { addAbsence } from "../../electron/store/tables/absences.ts";
import { addAthlete, leagueNamed, type NewAthlete } from "../../electron/store/tables/athletes.ts";
import { setCall } from "../../electron/store/tables/calls.ts";
import { addDay, setDayState } from "../../electron/store/tables/days.ts";
import { leaveOut, setEntrant } from "../../electron/store/tables/entrants.ts";
import { addEvent } from "../../electron/store/tables/heat-events.ts";
import { takeLane } from "../../electron/store/tables/heat-lanes.ts";
import { addHeat, endHeat, startHeat } from "../../electron/store/tables/heats.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { recordAttempt, voidAttempt } from "../../electron/store/tables/record.ts";
import { connectionOf } from "./connection.ts";

/** Somebody of an invented hall. Every text that is theirs begins with `sign`, which nobody else's does. */
export interface Invented extends Omit<NewAthlete, "leagueId"> {
  readonly sign: string;
  readonly league: string;
  readonly bib: number;
  /** Reps of a push-up test, and whether it was corrected once; null: not done. */
  readonly reps: number | null;
  readonly corrected: boolean;
  readonly heat: boolean;
  readonly past: boolean;
}

export const at = "2026-11-14T09:00:00.000Z";

/** The columns of a heat in every version of the store. */
export const heatColumns = `id, day_id, test, lanes, state, gathered_at, zero_ms, zero_boot, zero_wall, ending, reason,
  ended_by, ended_at`;
const parameters = { bpm: 40, beatsPerRep: 2, missesToStop: 3 };
const protocols = [
  { test: "push-up" as const, parameters },
  { test: "core" as const, parameters: { cycle: 240 } },
];

/** Adds a day with everybody on it and something in every table that can say something about them. */
export function fillHall(db: WritableDb, people: readonly Invented[]): { dayId: number; ids: number[] } {
  const dayId = addDay(db, { date: "2026-11-14", title: "A day", restMinutes: 5 }, protocols);
  setDayState(db, dayId, "open");
  const ids = people.map(({ league, ...person }) =>
    addAthlete(db, { leagueId: leagueNamed(db, league), ...person }),
  );
  for (const [index, person] of people.entries()) takePart(db, dayId, ids[index] ?? 0, person);
  const lanes = people.flatMap((person, index) => (person.heat ? { person, id: ids[index] ?? 0 } : []));
  if (lanes.length > 0) holdHeat(db, dayId, lanes.slice(0, 12));
  return { dayId, ids };
}

function takePart(db: WritableDb, dayId: number, athleteId: number, person: Invented): void {
  const { sign, bib, reps, corrected, past } = person;
  setEntrant(db, dayId, { athleteId, state: "testing", bib, since: at });
  const skip = { test: "endurance", kind: "skip", reason: `${sign} is late`, decidedBy: "QA", at } as const;
  leaveOut(db, dayId, { athleteId, ...skip });
  setCall(db, dayId, { athleteId, test: "core", at, holder: null });
  addAbsence(db, dayId, { id: `${sign}-away`, athleteId, test: "core", by: "QA", at });
  const common = {
    athleteId,
    enteredBy: "QA",
    source: "station",
    at,
    test: "push-up",
    variant: "full",
  } as const;
  const seen = (count: number) => ({ how: "tally", reps: count, offAtEnd: 0 });
  if (reps !== null) {
    const first = { ...common, id: `${sign}-1`, note: `${sign} was cold`, replaces: null, seen: seen(reps) };
    recordAttempt(db, dayId, first);
  }
  if (reps !== null && corrected) {
    voidAttempt(db, `${sign}-1`, { reason: `${sign}: a slip`, by: "QA", at });
    const second = { ...common, id: `${sign}-2`, note: "", replaces: `${sign}-1`, seen: seen(reps + 1) };
    recordAttempt(db, dayId, second);
  }
  const before = {
    date: "2025-10-01",
    test: "core",
    variant: "",
    value: 90,
    fingerprint: "core cycle=240",
  } as const;
  if (past) addPastMark(db, { athleteId, ...before });
}

function holdHeat(db: WritableDb, dayId: number, lanes: readonly { person: Invented; id: number }[]): void {
  const heat = { id: "heat-1", dayId };
  addHeat(db, { ...heat, test: "core", holder: null, lanes: 12, gatheredAt: at, gatheredBy: "QA" });
  for (const [index, { id }] of lanes.entries()) {
    takeLane(db, heat, { lane: index + 1, athleteId: id, variant: "" });
  }
  startHeat(db, heat.id, { ms: 5, boot: "b", wall: at });
  for (const [index, { person, id }] of lanes.entries()) {
    const lane = index + 1;
    const held = (60 + index) * 1000;
    addEvent(db, heat.id, {
      ...{ id: `${person.sign}-tap`, lane, kind: "stop", atMs: held, detail: {}, by: "QA", at },
    });
    const attempt = {
      id: `heat.heat-1.${lane}.${person.sign}`,
      athleteId: id,
      test: "core",
      variant: "",
    } as const;
    const rest = { enteredBy: "QA", note: "", source: "heat", at, replaces: null } as const;
    const fromHeat = { heatId: heat.id, result: "mark" };
    recordAttempt(db, dayId, { ...attempt, ...rest, seen: { held }, fromHeat });
  }
  endHeat(db, heat.id, { ending: "done", reason: "", by: "QA", at });
}

/** Every row of every table, as text. */
export function dump(db: ReadableDb): Map<string, unknown[]> {
  const sql =
    "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name";
  const connection = connectionOf(db);
  const names = connection.prepare<[], { name: string }>(sql).all();
  return new Map(
    names.map(({ name }) => [name, connection.prepare<[], unknown>(`SELECT * FROM "${name}"`).all()]),
  );
}
