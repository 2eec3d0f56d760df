import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, expect, test } from "vitest";
import { fold } from "../../electron/domain/people/fold.ts";
import type { ReadableDb } from "../../electron/store/connection/database.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { eraseAthlete } from "../../electron/store/erasure/erase.ts";
import { allErasures, wipeIsDue } from "../../electron/store/erasure/erase-log.ts";
import { heldRows } from "../../electron/store/erasure/held.ts";
import { addAthlete, allAthletes, athleteById } from "../../electron/store/tables/athletes.ts";
import { rebuildMarks } from "../../electron/store/tables/marks.ts";
import { namelessMarks, namelessOf } from "../../electron/store/tables/nameless.ts";
import { connectionOf } from "./connection.ts";
import { at, dump, fillHall, heatColumns, type Invented } from "./hall.ts";

const opened: Store[] = [];
const folders: string[] = [];
afterEach(() => {
  for (const store of opened.splice(0)) store.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function hall(people: readonly Invented[], file = ":memory:") {
  const store = openStore({ file });
  opened.push(store);
  return { store, ...store.write([], (db) => fillHall(db, people)) };
}

const plain: Invented = {
  ...{ sign: "qa", league: "Foundry Town", name: "Ada Rill", number: "9041", birthYear: 1991 },
  ...{ category: "open", guardianConsent: false, board: "name", share: true, asked: true, bib: 31 },
  ...{ reps: 20, corrected: true, heat: true, past: true },
};
const other: Invented = {
  ...{ ...plain, sign: "zb", name: "Bo Crank", number: "12", birthYear: 1985, bib: 2, share: false },
  league: "Gravel Moon",
};

function erase(store: Store, athleteId: number, id = "e-1"): void {
  let drawn = 0;
  store.write([], (db) => {
    const athlete = athleteById(db, athleteId);
    if (athlete === undefined) throw new Error("Nobody has this id.");
    const kept = namelessOf(db, athlete, () => `random-${athleteId}-${drawn++}`);
    eraseAthlete(db, athlete, { id, at, by: "QA" }, kept);
  });
}

const invented = fc.record({
  name: fc.stringMatching(/^[A-Za-zÀ-ž' .-]{1,12}$/),
  number: fc.constantFrom("", "own"),
  category: fc.constantFrom("women" as const, "men" as const, "open" as const, null),
  league: fc.constantFrom("Foundry Town", "Gravel Moon", "own"),
  share: fc.boolean(),
  guardianConsent: fc.boolean(),
  reps: fc.option(fc.integer({ min: 1, max: 80 })),
  corrected: fc.boolean(),
  heat: fc.boolean(),
  past: fc.boolean(),
});

/** Gives everybody texts and numbers that nobody else has, and that stand nowhere else. */
function distinct(
  drawn: readonly Omit<Invented, "sign" | "bib" | "birthYear" | "board" | "asked">[],
): Invented[] {
  return drawn.map((one, index) => {
    const sign = `xq${String.fromCharCode(97 + index).repeat(3)}`;
    return {
      ...{ ...one, sign, name: `${sign} ${one.name}`, number: one.number && `${7710 + index}` },
      league: one.league === "own" ? `${sign} league` : one.league,
      ...{ bib: 7310 + index, birthYear: 1950 + index, board: "bib", asked: true },
    };
  });
}

/** A person as everybody's rows show them. */
function rowsOf(db: ReadableDb, id: number): string {
  return JSON.stringify([athleteById(db, id), heldRows(db, id)]);
}

test("after somebody random is erased, no value of theirs is anywhere, and everybody else's rows are byte-equal", () => {
  const many = fc.array(invented, { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(many, fc.nat(), (drawn, choice) => {
      const people = distinct(drawn);
      const { store, ids } = hall(people);
      const gone = choice % people.length;
      const person = people[gone] as Invented;
      const kept = ids.filter((_, index) => index !== gone);
      const before = kept.map((id) => rowsOf(store.db, id));
      erase(store, ids[gone] ?? 0);

      const all = dump(store.db);
      const text = JSON.stringify([...all]).toLowerCase();
      for (const value of [person.sign, fold(person.name)]) expect(text).not.toContain(value.toLowerCase());
      const cells = new Set([...all.values()].flat().flatMap((row) => Object.values(row as object)));
      expect(cells).not.toContain(person.birthYear);
      expect(cells).not.toContain(person.bib);
      if (person.number !== "") expect(cells).not.toContain(person.number);
      expect(kept.map((id) => rowsOf(store.db, id))).toEqual(before);
      expect(connectionOf(store.db).pragma("foreign_key_check")).toEqual([]);
      const marks = all.get("mark");
      store.write([], rebuildMarks);
      expect(dump(store.db).get("mark")).toEqual(marks);
      const expected = person.share ? Number(person.reps !== null) + Number(person.heat) : 0;
      expect(namelessMarks(store.db)).toHaveLength(expected);
      store.close();
      opened.splice(opened.indexOf(store), 1);
    }),
    { numRuns: 60 },
  );
});

test("what stays of somebody who agreed to share is the mark and what a bundle may say of it", () => {
  const { store, ids, dayId } = hall([plain, other]);
  erase(store, ids[0] ?? 0);
  const all = namelessMarks(store.db, dayId);
  const common = { dayId, ageBand: "35 to 39", category: "open" };
  expect(all.map(({ id: _, ...mark }) => mark).sort((a, b) => a.value - b.value)).toEqual([
    {
      ...{ ...common, test: "push-up", variant: "full", value: 21 },
      fingerprint: "push-up/full beatsPerRep=2 bpm=40 missesToStop=3",
    },
    { ...common, test: "core", variant: "", fingerprint: "core cycle=240", value: 60 },
  ]);
  erase(store, ids[1] ?? 0, "e-2");
  expect(namelessMarks(store.db)).toHaveLength(2);
  expect(allErasures(store.db).map(({ id, by, wiped }) => [id, by, wiped])).toEqual([
    ["e-1", "QA", false],
    ["e-2", "QA", false],
  ]);
});

test("somebody who may be under 18 leaves no mark unless the guardian agreed too", () => {
  const minor = { ...plain, birthYear: 2009, guardianConsent: false };
  const { store, ids } = hall([minor, { ...other, birthYear: 2009, guardianConsent: true, share: true }]);
  erase(store, ids[0] ?? 0);
  expect(namelessMarks(store.db)).toEqual([]);
  erase(store, ids[1] ?? 0, "e-2");
  expect(namelessMarks(store.db)).toHaveLength(2);
});

test("what others' rows say of them goes as well: the name in notes, and whose attempt was corrected", () => {
  const { store, ids, dayId } = hall([plain, other]);
  const [ada = 0, bo = 0] = ids;
  connectionOf(store.db).exec(`
    INSERT INTO attempt SELECT NULL, 'moved', day_id, ${bo}, 'core', 'x', '', '{"held":1000}', 'QA',
      'keyed for Áda  RILL''s lane, not Adam', 'station', at, 'qa-2', NULL, NULL, at FROM attempt WHERE id = 'qa-2';
    INSERT INTO void VALUES ('moved', 'was ada rill', 'QA', '${at}');
    INSERT INTO left_out VALUES (${dayId}, ${bo}, 'agility', 'skip', 'waits for Ada Rill', 'QA', '${at}');
    INSERT INTO heat (${heatColumns}) VALUES ('off', ${dayId}, 'core', 2, 'ended', '${at}', NULL, NULL, NULL, 'called-off',
      'Ada Rill fell', 'QA', '${at}');
    INSERT INTO heat_event VALUES (NULL, 'lost', 'heat-1', 2, 'again',  5, '{"reason":"Ada Rill ran in"}', 'QA', '${at}');
  `);
  erase(store, ada);
  const rows = heldRows(store.db, bo);
  expect(rows.attempt.at(-1)).toMatchObject({ note: "keyed for […]'s lane, not Adam", replaces: null });
  expect(rows.void.map(({ reason }) => reason)).toContain("was […]");
  expect(rows.left_out.map(({ reason }) => reason)).toContain("waits for […]");
  expect(rows.heat_event.map(({ detail }) => detail)).toContain('{"reason":"[…] ran in"}');
  expect(JSON.stringify([...dump(store.db)]).toLowerCase()).not.toContain("ada rill");
});

const hostile = [
  "Robert'); DROP TABLE athlete;--",
  '"quoted" \\ back',
  "ŻÓŁĆ Ünïcode",
  "!!!",
  "%_%",
  "👟 Rollé\u200d",
  "‮right to left",
  "a".repeat(80),
];
test.each(hostile)("a name can't get in the way of its own erasure: %s", (name) => {
  const { store, ids } = hall([{ ...plain, name }, other]);
  connectionOf(store.db).exec(
    `INSERT INTO left_out VALUES (1, ${ids[1]}, 'agility', 'skip', 'x', 'QA', '${at}')`,
  );
  const note = connectionOf(store.db).prepare<[string], never>(
    "UPDATE left_out SET reason = ? WHERE test = 'agility'",
  );
  note.run(`(${name}) waits`);
  erase(store, ids[0] ?? 0);
  expect(allAthletes(store.db).map((one) => one.name)).toEqual(["Bo Crank"]);
  expect(JSON.stringify([...dump(store.db)])).not.toContain(JSON.stringify(name).slice(1, -1));
});

const permit = (athleteId: number) =>
  `INSERT INTO erasing (athlete_id, erasure_id, at, erased_by) VALUES (${athleteId}, 'x', '${at}', 'QA');`;

test.each([
  ["a permit alone", /FOREIGN KEY/, permit(1)],
  ["a permit given back", /ends with the athlete gone/, `BEGIN; ${permit(1)} DELETE FROM erasing; COMMIT;`],
  [
    "one attempt by a permit",
    /FOREIGN KEY/,
    `BEGIN; ${permit(1)} DELETE FROM void WHERE attempt_id = 'qa-1'; DELETE FROM attempt WHERE id = 'qa-2'; COMMIT;`,
  ],
  [
    "another's attempt",
    /append-only/,
    `BEGIN; ${permit(1)} DELETE FROM void WHERE attempt_id = 'zb-1'; COMMIT;`,
  ],
  [
    "another's attempt itself",
    /append-only/,
    `BEGIN; ${permit(1)} DELETE FROM attempt WHERE id = 'zb-2'; COMMIT;`,
  ],
  ["another's tap", /append-only/, `BEGIN; ${permit(1)} DELETE FROM heat_event WHERE id = 'zb-tap'; COMMIT;`],
  [
    "what was seen",
    /append-only/,
    `BEGIN; ${permit(1)} UPDATE attempt SET seen = '{}' WHERE id = 'zb-2'; COMMIT;`,
  ],
  [
    "a note put otherwise",
    /append-only/,
    `BEGIN; ${permit(1)} UPDATE attempt SET note = 'fine' WHERE id = 'zb-2'; COMMIT;`,
  ],
  [
    "a correction's link to one's own",
    /append-only/,
    `BEGIN; ${permit(1)} UPDATE attempt SET replaces = NULL WHERE id = 'zb-2'; COMMIT;`,
  ],
  ["a permit for nobody", /FOREIGN KEY/, `BEGIN; ${permit(99)} COMMIT;`],
  [
    "a permit put on another",
    /for one athlete/,
    `BEGIN; ${permit(1)} UPDATE erasing SET athlete_id = 2; COMMIT;`,
  ],
  [
    "a permit replaced",
    /ends with the athlete gone/,
    `BEGIN; ${permit(1)} INSERT OR REPLACE INTO erasing SELECT athlete_id, 'y', at, 'QB', 1 FROM erasing; COMMIT;`,
  ],
  ["a row to end with", /CHECK/, "INSERT INTO never VALUES (1);"],
  ["the audit's line away", /on record/, "DELETE FROM erasure;"],
  ["the audit's line otherwise", /on record/, "UPDATE erasure SET erased_by = 'QB';"],
  [
    "the audit's line replaced",
    /on record/,
    "INSERT OR REPLACE INTO erasure SELECT id, at, 'QB', wiped FROM erasure;",
  ],
  [
    "an id given again",
    /given once/,
    "INSERT INTO athlete SELECT 3, league_id, 'New', 'new', '', NULL, NULL, 0, 'bib', 0, 0 FROM athlete WHERE id = 1;",
  ],
  ["nameless marks", /append-only/, "DELETE FROM nameless_mark;"],
  ["a nameless mark", /append-only/, "UPDATE nameless_mark SET value = 1;"],
])("ordinary SQL still can't: %s", (_, why, sql) => {
  const third = { ...plain, sign: "yc", name: "Cy Loop", number: "3", bib: 3 };
  const { store, ids } = hall([plain, other, third]);
  erase(store, ids[2] ?? 0);
  const before = dump(store.db);
  expect(() => connectionOf(store.db).exec(sql)).toThrow(why);
  if (store.db.inTransaction) connectionOf(store.db).exec("ROLLBACK");
  expect(dump(store.db)).toEqual(before);
});

/** What a permit lets change in others' rows, and only by taking a name out of it. */
const mayLose = ["attempt.note", "void.reason", "heat.reason", "heat_event.detail"];

test.each(["attempt", "void", "heat", "heat_event"])(
  "by a permit no column of %s changes but words",
  (table) => {
    const { store } = hall([plain, other]);
    const columns = connectionOf(store.db).pragma(`table_info("${table}")`) as {
      name: string;
      type: string;
    }[];
    for (const { name, type } of columns) {
      const value = type === "TEXT" ? `'{"other":1}'` : "77";
      const where = table === "heat" ? "1" : `rowid = (SELECT max(rowid) FROM ${table})`;
      const last = table === "void" ? "attempt_id = 'zb-1'" : where;
      const change = (to: string) => () => {
        connectionOf(store.db).exec(`BEGIN; ${permit(1)}`);
        try {
          connectionOf(store.db).exec(`UPDATE ${table} SET ${name} = ${to} WHERE ${last}`);
        } finally {
          connectionOf(store.db).exec("ROLLBACK");
        }
      };
      expect(change(value), name).toThrow(/append-only|stays as it is|starts once/);
      if (mayLose.includes(`${table}.${name}`)) expect(change(`'{"now":"[…]"}'`), name).not.toThrow();
    }
  },
);

test("an erasure that fails half way leaves everything as it was", () => {
  const { store, ids } = hall([plain, other]);
  const before = dump(store.db);
  const [ada = 0] = ids;
  const half = () =>
    store.write([], (db) => {
      const athlete = athleteById(db, ada);
      if (athlete === undefined) throw new Error("Nobody has this id.");
      eraseAthlete(db, athlete, { id: "e", at, by: "QA" }, []);
      throw new Error("the disk is full");
    });
  expect(half).toThrow("the disk is full");
  expect(dump(store.db)).toEqual(before);
});

test("an id is never given twice, also not to the next after the newest is gone", () => {
  const { store, ids } = hall([plain, other]);
  const [, newest = 0] = ids;
  erase(store, newest);
  const { league: _, sign: _s, ...who } = other;
  expect(store.write([], (db) => addAthlete(db, { ...who, leagueId: 1, number: "5" }))).toBe(newest + 1);
});

/** Whether a text stands in any file of a folder, in either encoding that SQLite or a browser writes. */
function found(folder: string, text: string): string[] {
  return readdirSync(folder).filter((name) => {
    const bytes = readFileSync(join(folder, name));
    return [Buffer.from(text, "utf8"), Buffer.from(text, "utf16le")].some((each) => bytes.includes(each));
  });
}

// Deleted rows are overwritten with zeros; writing the file anew has to do without that.
test.each(["ON", "OFF"])(
  "no byte of the store or of its log holds what was erased (secure_delete %s)",
  (secure) => {
    const folder = mkdtempSync(join(tmpdir(), "tapeline-erase-"));
    folders.push(folder);
    const sign = "Zanzibarquux";
    const people = Array.from({ length: 60 }, (_, index) => ({
      ...{ ...other, sign: `p${index}`, name: `Person ${index}`, number: `${index + 100}`, bib: index + 100 },
      heat: index < 10,
    }));
    const { store, ids } = hall(
      [{ ...plain, sign, name: `${sign} Vex` }, ...people],
      join(folder, "s.sqlite"),
    );
    expect(found(folder, sign)).not.toEqual([]);
    connectionOf(store.db).pragma(`secure_delete = ${secure}`);
    erase(store, ids[0] ?? 0);
    expect(wipeIsDue(store.db)).toBe(true);
    store.wipe();
    expect(wipeIsDue(store.db)).toBe(false);
    expect(found(folder, sign)).toEqual([]);
    expect(found(folder, sign.toLowerCase())).toEqual([]);
    expect(connectionOf(store.db).pragma("integrity_check", { simple: true })).toBe("ok");
    store.close();
    opened.splice(0);
    expect(found(folder, sign)).toEqual([]);
  },
);

test("where the program ended before the file was written anew, the next start does it", () => {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-erase-"));
  folders.push(folder);
  const file = join(folder, "s.sqlite");
  const { store, ids } = hall([plain, other], file);
  erase(store, ids[0] ?? 0);
  store.close();
  opened.splice(0);
  const again = openStore({ file });
  opened.push(again);
  expect(allErasures(again.db)).toMatchObject([{ wiped: true }]);
});
