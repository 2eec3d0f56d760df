import type { Desk } from "../../../electron/api/door/desk.ts";
import { connectionOf } from "../../store/connection.ts";

/** Where the values of a key stand in a store; of long tables the newest. */
const sources: Readonly<Record<string, string>> = {
  athleteId: `SELECT athlete_id AS value FROM entrant JOIN day ON day.id = day_id WHERE day.state = 'open'
      AND entrant.state = 'testing' UNION ALL SELECT * FROM (SELECT id FROM athlete ORDER BY id DESC LIMIT 5)`,
  leagueId: "SELECT id AS value FROM league LIMIT 10",
  dayId: "SELECT id AS value FROM day",
  heatId: "SELECT id AS value FROM heat ORDER BY gathered_at DESC LIMIT 6",
  eventId: "SELECT id AS value FROM heat_event ORDER BY seq DESC LIMIT 10",
  attemptId: "SELECT id AS value FROM attempt ORDER BY seq DESC LIMIT 20",
  erasureId: "SELECT id AS value FROM erasure LIMIT 5",
  logged: "SELECT id AS value FROM export_log LIMIT 5",
  bib: "SELECT bib AS value FROM entrant WHERE bib IS NOT NULL LIMIT 20",
  league: "SELECT name AS value FROM league LIMIT 10",
  name: "SELECT name AS value FROM athlete ORDER BY id DESC LIMIT 20",
  number: "SELECT number AS value FROM athlete ORDER BY id DESC LIMIT 20",
};

/** Keys that mean the same as another. */
const also: Readonly<Record<string, string>> = { again: "heatId", query: "name", typed: "name", to: "lane" };

const fixed: Readonly<Record<string, readonly unknown[]>> = {
  by: ["QA", "ZW"],
  reason: ["A slip", "Twisted an ankle"],
  note: ["", "cold hands"],
  lane: [1, 2, 3],
  startedAgoMs: [0, 10, 4000],
  passphrase: [null, "four words of a hall"],
  pin: ["417093", "905172"],
  current: [null, "417093", "905172"],
  minutes: [0, 5],
  birthYear: [null, 1926, 1990, 2010],
  field: ["name", "league", "test", "number"],
  header: ["Name", "League", "Test"],
};

/** Values that keys have in the hall just now, read again after every change; and those that answers gave. */
export interface Known {
  of(key: string): readonly unknown[];
  /** Keeps what an answer gave under that key (an upload's id), the newest ten. */
  keep(key: string, value: unknown): void;
}

export function knownOf(desk: Desk): Known {
  const given = new Map<string, unknown[]>();
  const read = new Map<string, readonly unknown[]>();
  let readAt = "";

  function stored(key: string): readonly unknown[] {
    const now = `${desk.kind}.${desk.store.seq()}`;
    if (now !== readAt) read.clear();
    readAt = now;
    const values = read.get(key) ?? query(desk, key);
    read.set(key, values);
    return values;
  }

  return {
    of(key) {
      const name = also[key] ?? key;
      return fixed[name] ?? given.get(name) ?? stored(name);
    },
    keep(key, value) {
      given.set(key, [value, ...(given.get(key) ?? [])].slice(0, 10));
    },
  };
}

function query({ store }: Desk, key: string): readonly unknown[] {
  const sql = sources[key];
  if (sql === undefined) return [];
  return connectionOf(store.db)
    .prepare<[], { value: unknown }>(sql)
    .all()
    .map(({ value }) => value);
}
