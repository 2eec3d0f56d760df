import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { rulesVersion } from "../../electron/domain/tests/registry.ts";
import { applicationId } from "../../electron/store/connection/examine.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { references } from "../../electron/store/migrations/0005-references.ts";
import { heatOfAttempt } from "../../electron/store/migrations/0006-heat-of-attempt.ts";
import { dayHistory } from "../../electron/store/migrations/0007-day-history.ts";
import { pastVoid } from "../../electron/store/migrations/0008-past-void.ts";
import { steps } from "../../electron/store/migrations/0010-steps.ts";
import { devices } from "../../electron/store/migrations/0011-devices.ts";
import { heatHolder } from "../../electron/store/migrations/0014-heat-holder.ts";
import { studies } from "../../electron/store/migrations/0020-studies.ts";
import { dayPlan } from "../../electron/store/migrations/0021-day-plan.ts";
import { performed } from "../../electron/store/migrations/0022-performed.ts";
import { correctionsFound } from "../../electron/store/migrations/0024-corrections-found.ts";
import { secondJudges } from "../../electron/store/migrations/0025-second-judges.ts";
import { referenceTables } from "../../electron/store/migrations/0026-reference-tables.ts";
import { migrations } from "../../electron/store/migrations/list.ts";
import { addDay, identityOfDay } from "../../electron/store/tables/days.ts";
import { devicesOf, placeDevice } from "../../electron/store/tables/devices.ts";
import { connectionOf } from "./connection.ts";
import { heatColumns } from "./hall.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-step-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const file = () => join(folder, "tapeline.sqlite");

const at = "2026-11-14T09:00:00.000Z";

/** Rows in every table of the first version. */
const rows = `
  INSERT INTO league VALUES (1, 'Foundry Town', 'foundry town');
  INSERT INTO athlete VALUES (1, 1, 'Ada Rill', 'ada rill', '07', 1999, 'open', 0, 'bib', 1, 1);
  INSERT INTO athlete VALUES (2, 1, 'Bo Crank', 'bo crank', '', NULL, NULL, 1, 'hidden', 0, 0);
  INSERT INTO day VALUES (1, '2026-05-02', 'Spring', 'closed', 5);
  INSERT INTO day VALUES (2, '2026-11-14', 'Autumn', 'planned', 7);
  INSERT INTO day_protocol VALUES (2, 'core', '{"cycle":240}');
  UPDATE day SET state = 'open' WHERE id = 2;
  INSERT INTO entrant VALUES (2, 1, 'testing', 1, '${at}');
  INSERT INTO entrant VALUES (2, 2, 'expected', NULL, '${at}');
  INSERT INTO left_out VALUES (2, 1, 'endurance', 'skip', 'Knee', 'QA', '${at}');
  INSERT INTO call VALUES (2, 1, 'core', '${at}');
  INSERT INTO attempt VALUES (3, '${randomUUID()}', 2, 1, 'core', '', '', '{"held":61000}', 'QA', '', 'sheet', '${at}', NULL);
  INSERT INTO void SELECT id, 'Slip', 'QA', '${at}' FROM attempt;
  INSERT INTO attempt SELECT 9, '${randomUUID()}', 2, 1, 'core', '', '', '{"held":62000}', 'QA', 'n', 'heat', '${at}', id
    FROM attempt;
  INSERT INTO mark VALUES (1, 'core', '', 2, 'core cycle=240', 'complete', 62, '{"state":"complete","value":62}', 9, 1);
  INSERT INTO past_mark VALUES (2, 'core cycle=240', '2025-10-01', 'core', '', 90);
  INSERT INTO export_log VALUES (1, '${at}', 1, 5, 'abc');
`;

const heat = randomUUID();
const heats = `
  INSERT INTO heat (${heatColumns}) VALUES ('${heat}', 2, 'core', 2, 'gathering', '${at}', NULL, NULL, NULL, NULL, '', '', NULL);
  INSERT INTO heat_lane VALUES ('${heat}', 1, 2, 1, '');
  INSERT INTO heat_lane VALUES ('${heat}', 2, 2, 2, '');
  UPDATE heat SET state = 'running', zero_ms = 5, zero_boot = 'b', zero_wall = '${at}';
  INSERT INTO heat_event VALUES (1, 'tap', '${heat}', 1, 'stop', 60000, '{}', 'QA', '${at}');
`;

/** Every table with all its rows, and everything that guards them. */
function everything(): { tables: Map<string, unknown[]>; schema: Map<string, string> } {
  const db = new SqliteDatabase(file(), { readonly: true });
  const found = db
    .prepare<[], { name: string; type: string; sql: string }>(
      "SELECT name, type, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name",
    )
    .all();
  const tables = found
    .filter(({ type }) => type === "table")
    .map(({ name }) => [name, db.prepare(`SELECT * FROM "${name}" ORDER BY 1`).all()] as const);
  db.close();
  return { tables: new Map(tables), schema: new Map(found.map(({ name, sql }) => [name, sql])) };
}

/** A store as that version of the program left it. */
function makeVersion(version: number, filled: string): void {
  const db = new SqliteDatabase(file());
  for (const sql of migrations.slice(0, version)) db.exec(sql);
  db.exec(filled);
  db.pragma(`application_id = ${applicationId}`);
  db.pragma(`user_version = ${version}`);
  db.close();
}

type Row = Readonly<Record<string, unknown>>;

/**
 * Takes the next step, and compares: all rows of before are there as they were (or as `expected` says); returns the
 * schema before and after.
 */
function step(
  from: number,
  emptyAlways: readonly string[] = [],
  expected: (table: string, row: Row) => Row = (_table, row) => row,
): { before: Map<string, string>; after: Map<string, string>; added: unknown } {
  const before = everything();
  const empty = [...before.tables].filter(([, all]) => all.length === 0).map(([name]) => name);
  expect(empty).toEqual(emptyAlways);
  const db = new SqliteDatabase(file());
  db.pragma("foreign_keys = ON");
  db.exec(`BEGIN; ${migrations[from] ?? ""}; COMMIT`);
  expect(db.pragma("foreign_key_check")).toEqual([]);
  db.close();
  const after = everything();
  for (const [name, all] of before.tables) {
    const wanted = all.map((row) => expected(name, row as Row));
    expect([name, after.tables.get(name)]).toEqual([name, wanted]);
  }
  const added = [...after.tables].filter(([name]) => !before.tables.has(name));
  return { before: before.schema, after: after.schema, added };
}

test("the step to heats leaves every row of before, whole tables compared, and adds its own empty ones", () => {
  makeVersion(1, rows);
  const { before, after, added } = step(1);
  for (const [name, sql] of before) expect([name, after.get(name)]).toEqual([name, sql]);
  expect(added).toEqual(["absence", "heat", "heat_event", "heat_lane"].map((name) => [name, []]));
});

test("the step to erasure leaves every row of before, and opens no guard but those that a permit passes", () => {
  makeVersion(2, `${rows} ${heats} INSERT INTO absence VALUES ('away', 2, 2, 'core', 'QA', '${at}');`);
  const { before, after, added } = step(2);
  const changed = [...before].filter(([name, sql]) => after.get(name) !== sql).map(([name]) => name);
  expect(changed.sort()).toEqual(
    [
      ...["attempt_never_deleted", "attempt_never_updated", "void_never_deleted", "void_never_updated"],
      ...["heat_ended", "heat_event_never_deleted", "heat_event_never_updated"],
    ].sort(),
  );
  for (const name of changed) expect(after.get(name)).toContain("erasing");
  expect(added).toEqual([
    ["athlete_highest", [{ only_row: 1, id: 0 }]],
    ...["erasing", "erasure", "nameless_mark", "never"].map((name) => [name, []]),
  ]);
});

test("the step to bundles that were not saved leaves every row of before", () => {
  makeVersion(
    3,
    `${rows} ${heats} INSERT INTO absence VALUES ('away', 2, 2, 'core', 'QA', '${at}');
     INSERT INTO erasure VALUES ('gone', '${at}', 'QA', 0);
     INSERT INTO nameless_mark VALUES ('none', 2, 'core', '', 'core cycle=240', 60, '25 to 29', 'open');`,
  );
  const { before, after, added } = step(3, ["erasing", "never"]);
  for (const [name, sql] of before) expect([name, after.get(name)]).toEqual([name, sql]);
  expect(added).toEqual([["export_unsaved", []]]);
});

test("the step to bundles from elsewhere leaves every row of before, and adds its own empty tables", () => {
  const from = migrations.indexOf(references);
  makeVersion(
    from,
    `${rows} ${heats} INSERT INTO absence VALUES ('away', 2, 2, 'core', 'QA', '${at}');
     INSERT INTO erasure VALUES ('gone', '${at}', 'QA', 0);
     INSERT INTO nameless_mark VALUES ('none', 2, 'core', '', 'core cycle=240', 60, '25 to 29', 'open');
     INSERT INTO export_unsaved VALUES (1, '${at}');`,
  );
  const { before, after, added } = step(from, ["erasing", "never"]);
  for (const [name, sql] of before) expect([name, after.get(name)]).toEqual([name, sql]);
  expect(added).toEqual(["reference", "reference_mark", "reference_test"].map((name) => [name, []]));
});

/** What people entered about the heat below: a correction, its own correction, two for the other athlete, a stray. */
const corrections = `
  INSERT INTO attempt VALUES (20, 'heat.HEAT.1.mark.0', 2, 1, 'core', 'x', '', '{"held":60000}', 'QA', '', 'heat', '${at}', NULL);
  INSERT INTO attempt VALUES (21, 'own-1', 2, 1, 'core', 'x', '', '{"held":60100}', 'QA', '', 'station', '${at}', 'heat.HEAT.1.mark.0');
  INSERT INTO attempt VALUES (22, 'own-2', 2, 1, 'core', 'y', '', '{"held":60200}', 'QA', '', 'station', '${at}', 'own-1');
  INSERT INTO attempt VALUES (23, 'moved', 2, 2, 'core', 'x', '', '{"held":60300}', 'QA', '', 'station', '${at}', 'own-2');
  INSERT INTO attempt VALUES (24, 'back', 2, 1, 'core', 'x', '', '{"held":60400}', 'QA', '', 'station', '${at}', 'moved');
  INSERT INTO attempt VALUES (25, 'heat.HEAT.2.5c0e.0', 2, 2, 'core', 'x', '', '{"held":60500}', 'QA', '', 'heat', '${at}', NULL);
  INSERT INTO attempt VALUES (26, 'heat.HEAT.2.5c0e.1', 2, 2, 'core', 'x', '', '{"held":60600}', 'QA', '', 'heat', '${at}', NULL);
  INSERT INTO attempt VALUES (27, 'heat.HEAT.2.mark.0', 2, 1, 'core', 'x', '', '{"held":60700}', 'QA', '', 'heat', '${at}', NULL);
  INSERT INTO attempt VALUES (28, 'heat.gone.1.mark.0', 2, 1, 'core', 'x', '', '{"held":60800}', 'QA', '', 'heat', '${at}', NULL);
  INSERT INTO attempt VALUES (29, 'heat.HEAT.1.mark.9', 2, 1, 'core', 'x', '', '{"held":60900}', 'QA', '', 'sheet', '${at}', NULL);
  INSERT INTO attempt VALUES (80, 'newest', 2, 1, 'core', 'x', '', '{"held":61000}', 'QA', '', 'station', '${at}', NULL);
  INSERT INTO void SELECT id, 'Slip', 'QA', '${at}' FROM attempt WHERE seq BETWEEN 20 AND 23;
  UPDATE sqlite_sequence SET seq = 95 WHERE name = 'attempt';
`;
/** By seq: the heat and the result of each; all others have neither. */
const ofHeat = new Map<unknown, { heat_id: string; result: string | null }>();

test("the step to an attempt's heat leaves every row, and fills what stood in the ids alone", () => {
  const of = (result: string | null) => ({ heat_id: heat, result });
  for (const seq of [21, 22]) ofHeat.set(seq, of(null));
  for (const seq of [25, 26]) ofHeat.set(seq, of("5c0e"));
  ofHeat.set(20, of("mark"));
  const from = migrations.indexOf(heatOfAttempt);
  makeVersion(
    from,
    `${rows} ${heats} ${corrections.replaceAll("HEAT", heat)}
     INSERT INTO absence VALUES ('away', 2, 2, 'core', 'QA', '${at}');
     INSERT INTO erasure VALUES ('gone', '${at}', 'QA', 0);
     INSERT INTO nameless_mark VALUES ('none', 2, 'core', '', 'core cycle=240', 60, '25 to 29', 'open');
     INSERT INTO export_unsaved VALUES (1, '${at}');
     INSERT INTO reference VALUES (1, 'Hall', 'marks', 'a', 'b', '${at}');
     INSERT INTO reference_test VALUES (1, 'core', '', 'core cycle=240');
     INSERT INTO reference_mark VALUES (1, 1, 'core', '', 'open', '25 to 29', '2026-Q1', 60, 90, 5);`,
  );
  const { before, after, added } = step(from, ["erasing", "never"], (table, row) =>
    table === "attempt" ? { ...row, heat_id: null, result: null, ...ofHeat.get(row.seq) } : row,
  );
  const changed = [...before].filter(([name, sql]) => after.get(name) !== sql).map(([name]) => name);
  expect(changed.sort()).toEqual(["attempt", "attempt_never_updated"]);
  expect([...after.keys()]).toEqual([...before.keys()]);
  expect(added).toEqual([]);
});

test("a day of a store of before is called what devices called it by", () => {
  makeVersion(1, rows);
  const store = openStore({ file: file() });
  const called = [1, 2].map((id) => identityOfDay(store.db, id));
  store.close();
  expect(called).toEqual(["1 2026-05-02", "2 2026-11-14"]);
});

test("two stores tell their days apart, also where number and date are the same", () => {
  const identities = ["one", "other"].map((name) => {
    const store = openStore({ file: join(folder, name) });
    const day = { date: "2026-11-14", title: "A day", restMinutes: 5 };
    const id = store.write([], (db) => addDay(db, day, []));
    const identity = identityOfDay(store.db, id);
    store.close();
    return { id, identity };
  });
  const [one, other] = identities;
  expect(one?.id).toBe(other?.id);
  expect(one?.identity).toMatch(/^[0-9a-f]{32}$/);
  expect(other?.identity).not.toBe(one?.identity);
});

test.each([1, 2, 3, 4, 5])("a store of version %i opens, its marks checked, and loses nothing", (version) => {
  makeVersion(version, version === 1 ? rows : `${rows} ${heats}`);
  const before = everything().tables;
  openStore({ file: file() }).close();
  const { tables } = everything();
  for (const [name, all] of before) {
    // Marks are made again by the rules of now.
    const then = name === "mark" ? all.map((row) => ({ ...(row as Row), rules: rulesVersion })) : all;
    expect([name, tables.get(name)]).toMatchObject([name, then]);
  }
});

const athleteOf = (id: number) => `
  INSERT INTO athlete VALUES (${id}, 1, 'Cy', 'cy', '', NULL, NULL, 0, 'bib', 0, 0);
  INSERT INTO entrant VALUES (2, ${id}, 'testing', ${id}, '${at}');`;

test.each([
  ["of nobody in its lanes", /FOREIGN KEY/, 3, `'heat', '${at}', NULL, '${heat}', 'mark'`],
  ["of no heat", /FOREIGN KEY/, 1, `'heat', '${at}', NULL, 'gone', 'mark'`],
  ["with a result of no heat", /CHECK/, 1, `'heat', '${at}', NULL, NULL, 'mark'`],
  ["with a result that people entered", /CHECK/, 1, `'station', '${at}', NULL, '${heat}', 'mark'`],
])("a heat has no attempt %s", (_, why, athlete, values) => {
  makeVersion(1, rows);
  const store = openStore({ file: file() });
  connectionOf(store.db).exec(heats + athleteOf(3));
  const sql = `INSERT INTO attempt VALUES (NULL, 'a', 2, ${athlete}, 'core', '', '', '{}', 'QA', '', ${values}, NULL)`;
  expect(() => connectionOf(store.db).exec(sql)).toThrow(why);
  store.close();
});

test("the guards of before still hold after the step", () => {
  makeVersion(1, rows);
  const store = openStore({ file: file() });
  expect(connectionOf(store.db).pragma("user_version", { simple: true })).toBe(migrations.length);
  expect(connectionOf(store.db).pragma("foreign_key_check")).toEqual([]);
  expect(() => connectionOf(store.db).exec("UPDATE attempt SET note = 'x'")).toThrow(/append-only/);
  store.close();
});

test.each([
  ["UPDATE heat_event SET at_ms = 1", /append-only/],
  ["DELETE FROM heat_event", /append-only/],
  [
    `REPLACE INTO heat_event SELECT seq, id, heat_id, lane, kind, 1, detail, tapped_by, at FROM heat_event`,
    /append-only/,
  ],
  ["UPDATE heat_lane SET athlete_id = 2 WHERE lane = 1", /keeps its athlete/],
  ["DELETE FROM heat_lane WHERE lane = 1", /keeps its athlete/],
  ["UPDATE heat SET zero_ms = 9", /starts once/],
  ["DELETE FROM heat", /stays/],
  [
    `INSERT INTO heat (${heatColumns}) VALUES ('other', 2, 'core', 2, 'gathering', '${at}', NULL, NULL, NULL, NULL, '', '', NULL)`,
    /UNIQUE/,
  ],
  [`INSERT INTO heat_event VALUES (2, 'stray', '${heat}', 7, 'stop', 1, '{}', 'QA', '${at}')`, /FOREIGN KEY/],
  [`INSERT INTO heat_event VALUES (2, 'tap', '${heat}', 1, 'stop', 1, '{}', 'QA', '${at}')`, /UNIQUE/],
  [`UPDATE heat SET state = 'ended', ending = 'called-off', ended_by = 'QA', ended_at = '${at}'`, /CHECK/],
])("a heat can't be bent: %s", (sql, why) => {
  makeVersion(1, rows);
  const store = openStore({ file: file() });
  connectionOf(store.db).exec(heats);
  expect(() => connectionOf(store.db).exec(sql)).toThrow(why);
  store.close();
});

test("a heat that has ended stays as it is", () => {
  makeVersion(1, rows);
  const store = openStore({ file: file() });
  connectionOf(store.db).exec(heats);
  connectionOf(store.db).exec(
    `UPDATE heat SET state = 'ended', ending = 'done', ended_by = 'QA', ended_at = '${at}'`,
  );
  expect(() => connectionOf(store.db).exec("UPDATE heat SET reason = 'x'")).toThrow(/has ended/);
  store.close();
});

test.each([
  ["a day's history", dayHistory, ["day_event", "discarded_day"]],
  ["removed earlier results", pastVoid, ["past_void"]],
  ["devices", devices, ["device"]],
  ["measuring studies", studies, ["study", "study_reading", "study_series"]],
  ["a day's plan", dayPlan, ["day_plan"]],
  ["corrections found by an index", correctionsFound, []],
] as const)(
  "the step to %s leaves every row of before, and adds its own empty tables",
  (_what, sqlOfStep, names) => {
    const from = migrations.indexOf(sqlOfStep);
    makeVersion(1, rows);
    const older = new SqliteDatabase(file());
    for (const sql of migrations.slice(1, from)) older.exec(`BEGIN; ${sql}; COMMIT`);
    older.close();
    const before = everything();
    const db = new SqliteDatabase(file());
    db.exec(`BEGIN; ${migrations[from] ?? ""}; COMMIT`);
    db.close();
    const after = everything();
    for (const [name, all] of before.tables) expect([name, after.tables.get(name)]).toEqual([name, all]);
    for (const [name, sql] of before.schema) expect([name, after.schema.get(name)]).toEqual([name, sql]);
    const added = [...after.tables].filter(([name]) => !before.tables.has(name));
    expect(added).toEqual(names.map((name) => [name, []]));
  },
);

test("the step to the gatherer of a heat leaves every row of before, and knows of nobody who gathered it", () => {
  makeVersion(2, rows + heats);
  openStore({ file: file() }).close();
  const db = new SqliteDatabase(file(), { readonly: true });
  const kept = db.prepare("SELECT state, zero_ms AS zeroMs, gathered_by AS gatheredBy FROM heat").all();
  db.close();
  expect(kept).toEqual([{ state: "running", zeroMs: 5, gatheredBy: "" }]);
});

test("the step to second judges leaves every row, and lets devices of before have that place", () => {
  const from = migrations.indexOf(secondJudges);
  const [phone, television] = [randomUUID(), randomUUID()];
  makeVersion(1, rows);
  const older = new SqliteDatabase(file());
  for (const sql of migrations.slice(1, from)) older.exec(`BEGIN; ${sql}; COMMIT`);
  older.exec(`INSERT INTO device VALUES ('${phone}', 2, 'Red phone', 'station', 'core', '${"a".repeat(64)}', '${at}');
    INSERT INTO device VALUES ('${television}', 2, 'TV', 'board', NULL, '${"b".repeat(64)}', '${at}');`);
  older.pragma(`user_version = ${from}`);
  older.close();
  const before = everything().tables;
  openStore({ file: file() }).close();
  const { tables } = everything();
  expect(tables.get("device")).toEqual(before.get("device"));
  const store = openStore({ file: file() });
  store.write([], (db) => placeDevice(db, phone, { role: "second-judge", test: "core" }));
  const places = devicesOf(store.db, 2).map(({ name, place }) => [name, place]);
  store.close();
  expect(new Map(places as [string, unknown][])).toEqual(
    new Map<string, unknown>([
      ["Red phone", { role: "second-judge", test: "core" }],
      ["TV", { role: "board" }],
    ]),
  );
});

test("the step to heats of devices leaves every row, and gives each heat and call of before to the table", () => {
  const from = migrations.indexOf(heatHolder);
  makeVersion(1, rows);
  const older = new SqliteDatabase(file());
  for (const sql of migrations.slice(1, from)) older.exec(`BEGIN; ${sql}; COMMIT`);
  older.exec(heats);
  older.close();
  const before = everything();
  const db = new SqliteDatabase(file());
  db.exec(`BEGIN; ${heatHolder}; COMMIT`);
  const other = (id: string, holder: string) =>
    db.exec(`INSERT INTO heat (${heatColumns}, device_id)
      VALUES ('${id}', 2, 'core', 2, 'gathering', '${at}', NULL, NULL, NULL, NULL, '', '', NULL, ${holder})`);
  const after = everything();
  for (const [name, all] of before.tables) {
    const holds = name === "heat" || name === "call";
    const then = holds ? all.map((row) => ({ ...(row as object), device_id: null })) : all;
    expect([name, after.tables.get(name)]).toEqual([name, then]);
  }
  const changed = [...before.schema].filter(([name, sql]) => after.schema.get(name) !== sql);
  expect(changed.map(([name]) => name)).toEqual(["call", "heat", "heat_live"]);
  // Each device and the table hold one heat of a test at a time.
  const red = `'${randomUUID()}'`;
  other("red", red);
  expect(() => other("again", red)).toThrow(/UNIQUE/);
  expect(() => other("table", "NULL")).toThrow(/UNIQUE/);
  db.exec(
    `UPDATE heat SET state = 'ended', ending = 'done', ended_by = 'QA', ended_at = '${at}' WHERE id = '${heat}'`,
  );
  expect(() => db.exec(`UPDATE heat SET device_id = ${red} WHERE id = '${heat}'`)).toThrow(/has ended/);
  db.close();
});

test("the step to the history of who is who leaves every row and every table of before, and guards by name alone", () => {
  const from = migrations.indexOf(steps);
  makeVersion(1, rows);
  const older = new SqliteDatabase(file());
  for (const sql of migrations.slice(1, from)) older.exec(`BEGIN; ${sql}; COMMIT`);
  older.close();
  const before = everything();
  const db = new SqliteDatabase(file());
  db.exec(`BEGIN; ${steps}; COMMIT`);
  db.close();
  const after = everything();
  for (const [name, all] of before.tables) expect([name, after.tables.get(name)]).toEqual([name, all]);
  const added = [...after.tables].filter(([name]) => !before.tables.has(name));
  expect(added).toEqual(["step", "step_row", "stepping"].map((name) => [name, []]));
  const changed = [...before.schema].filter(([name, sql]) => after.schema.get(name) !== sql);
  expect(changed.map(([name]) => name)).toEqual([
    "athlete_id_once",
    "attempt_never_updated",
    "heat_lane_begun_update",
    "past_mark_deleted_with_reason",
    "past_void_never_updated",
  ]);
});

test("the step to when attempts were done leaves every row, and knows it of all but those of sheets", () => {
  const from = migrations.indexOf(performed);
  makeVersion(1, rows);
  const older = new SqliteDatabase(file());
  for (const sql of migrations.slice(1, from)) older.exec(`BEGIN; ${sql}; COMMIT`);
  older.close();
  const before = everything();
  const db = new SqliteDatabase(file());
  db.exec(`BEGIN; ${performed}; COMMIT`);
  expect(() => db.exec("UPDATE attempt SET performed = NULL")).toThrow(/append-only/);
  db.close();
  const after = everything();
  for (const [name, all] of before.tables) {
    const then = name !== "attempt" ? all : all.map((row) => ({ ...(row as Row), performed: doneOf(row) }));
    expect([name, after.tables.get(name)]).toEqual([name, then]);
  }
  const changed = [...before.schema].filter(([name, sql]) => after.schema.get(name) !== sql);
  expect(changed.map(([name]) => name)).toEqual(["attempt", "attempt_never_updated"]);
});

test("the step to tables from elsewhere leaves every row and every table of before, and adds its own empty ones", () => {
  const from = migrations.indexOf(referenceTables);
  makeVersion(1, rows);
  const older = new SqliteDatabase(file());
  for (const sql of migrations.slice(1, from)) older.exec(`BEGIN; ${sql}; COMMIT`);
  older.exec(`INSERT INTO reference VALUES (1, 'Hall', 'marks', 'a', 'b', '${at}')`);
  older.close();
  const before = everything();
  const db = new SqliteDatabase(file());
  db.exec(`BEGIN; ${referenceTables}; COMMIT`);
  db.close();
  const after = everything();
  for (const [name, all] of before.tables) expect([name, after.tables.get(name)]).toEqual([name, all]);
  for (const [name, sql] of before.schema) expect([name, after.schema.get(name)]).toEqual([name, sql]);
  const added = [...after.tables].filter(([name]) => !before.tables.has(name));
  const names = ["publisher", "reference_in_table", "reference_rules", "reference_table"];
  expect(added).toEqual(names.map((name) => [name, []]));
});

function doneOf(row: unknown): string | null {
  return (row as Row).source === "sheet" ? null : at;
}
