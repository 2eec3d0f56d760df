import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { grainsOf, type Length, lengthOfMillimetres } from "../../electron/domain/length.ts";
import { rulesVersion } from "../../electron/domain/tests/registry.ts";
import { findWrongMark } from "../../electron/store/connection/checks.ts";
import { applicationId } from "../../electron/store/connection/examine.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { heightsAsRead } from "../../electron/store/migrations/0017-heights-as-read.ts";
import { migrations } from "../../electron/store/migrations/list.ts";
import { marksOfDay, rebuildMarks } from "../../electron/store/tables/marks.ts";
import { cm, inches } from "../lengths.ts";
import { connectionOf } from "./connection.ts";
import { heatColumns } from "./hall.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-heights-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const file = () => join(folder, "tapeline.sqlite");

const at = "2026-11-14T09:00:00.000Z";
const rules = "vertical trials=3";

/** The whole millimetres that a quarter inch was kept as: 6.35 mm each, a half up. */
const rounded = (quarters: number) => Math.floor((635 * quarters + 50) / 100);

/** Reaches and touches in millimetres, one attempt each of an athlete of their own, on an open day. */
function makeBefore(attempts: readonly (readonly [reach: number, touch: number])[], more = ""): void {
  const db = new SqliteDatabase(file());
  for (const sql of migrations.slice(0, migrations.indexOf(heightsAsRead))) db.exec(sql);
  db.exec(`INSERT INTO league VALUES (1, 'Foundry Town', 'foundry town');
    INSERT INTO day (id, date, title, state, rest_minutes) VALUES (1, '2026-11-14', 'Autumn', 'planned', 5);
    INSERT INTO day_protocol VALUES (1, 'vertical', '{"trials":3}');
    UPDATE day SET state = 'open';`);
  const athlete = db.prepare(`INSERT INTO athlete VALUES (?, 1, ?, ?, '', NULL, NULL, 0, 'bib', 1, 1)`);
  const entrant = db.prepare(`INSERT INTO entrant VALUES (1, ?, 'testing', ?, '${at}')`);
  const attempt = db.prepare(`INSERT INTO attempt
    (seq, id, day_id, athlete_id, test, variant, slot, seen, entered_by, note, source, at)
    VALUES (?, ?, 1, ?, 'vertical', '', '', ?, 'QA', '', 'station', '${at}')`);
  const mark =
    db.prepare(`INSERT INTO mark (athlete_id, test, variant, day_id, fingerprint, state, value, detail, seq, rules)
    VALUES (?, 'vertical', '', 1, '${rules}', 'complete', ?, ?, ?, 1)`);
  db.exec("BEGIN");
  for (const [index, [standingReach, touchReach]] of attempts.entries()) {
    const id = index + 1;
    const value = touchReach - standingReach;
    athlete.run(id, `Ada ${id}`, `ada ${id}`);
    entrant.run(id, id);
    attempt.run(id, randomUUID(), id, JSON.stringify({ standingReach, touchReach, bodyMass: 61_000 }));
    mark.run(id, value, JSON.stringify({ state: "complete", value }), id);
  }
  db.exec(`COMMIT; ${more}`);
  db.pragma(`application_id = ${applicationId}`);
  db.pragma(`user_version = ${migrations.indexOf(heightsAsRead)}`);
  db.close();
}

/** Opens the store of before with the program of now, and returns what `read` finds in it. */
function migrated<Result>(read: (store: ReturnType<typeof openStore>) => Result): Result {
  const store = openStore({ file: file() });
  try {
    return read(store);
  } finally {
    store.close();
  }
}

const seenIn = ({ db }: ReturnType<typeof openStore>) =>
  connectionOf(db)
    .prepare<[], { seen: string }>("SELECT seen FROM attempt ORDER BY seq")
    .all()
    .map(({ seen }) => JSON.parse(seen) as { standingReach: Length; touchReach: Length; bodyMass: number });

test("reaches become what was read: half centimetres, or the quarter inches that were rounded to them", () => {
  // 86.5 in were kept as 2197, 102.75 in as 2610 and 81.75 in as 2076 (2076.45); 2441 mm is neither's.
  makeBefore([
    [2190, 2625],
    [2197, 2610],
    [2076, 2197],
    [2190, 2610],
    [2441, 2700],
  ]);
  const seen = migrated(seenIn);
  expect(seen).toEqual([
    { standingReach: cm(219), touchReach: cm(262.5), bodyMass: 61_000 },
    { standingReach: inches(86.5), touchReach: inches(102.75), bodyMass: 61_000 },
    { standingReach: inches(81.75), touchReach: inches(86.5), bodyMass: 61_000 },
    // Either may be both: they stay centimetres, less than a millimetre away.
    { standingReach: cm(219), touchReach: cm(261), bodyMass: 61_000 },
    { standingReach: { unit: "mm", whole: 2441 }, touchReach: cm(270), bodyMass: 61_000 },
  ]);
});

test("every inch reach of before with any jump comes back exactly, but where both are half centimetres too", () => {
  const pairs: [number, number][] = [];
  for (let reach = 280; reach <= 480; reach += 10) {
    for (let jump = 0; jump <= 144; jump += 3) pairs.push([reach, reach + jump]);
  }
  makeBefore(pairs.map(([reach, touch]) => [rounded(reach), rounded(touch)]));
  const seen = migrated(seenIn);
  let ambiguous = 0;
  for (const [index, { standingReach, touchReach }] of seen.entries()) {
    const [reach, touch] = pairs[index] ?? [0, 0];
    const isEither = [reach, touch].every((quarters) => rounded(quarters) % 5 === 0);
    if (isEither) {
      ambiguous += 1;
      expect([standingReach.unit, touchReach.unit]).toEqual(["cm", "cm"]);
      expect(
        Math.abs(grainsOf(touchReach) - grainsOf(standingReach) - (touch - reach) * 127),
      ).toBeLessThanOrEqual(19);
    } else {
      expect([standingReach, touchReach]).toEqual([inches(reach / 4), inches(touch / 4)]);
    }
  }
  // 0.199² of them are 4 % (each reading is half centimetres as well in one of five).
  expect(ambiguous / pairs.length).toBeLessThan(0.06);
});

test("marks are made again by the rules of now, differ by the rounding alone, and follow from their attempts", () => {
  const pairs = Array.from(
    { length: 120 },
    (_none, index) => [rounded(300 + index), rounded(360 + 2 * index)] as const,
  );
  makeBefore(pairs);
  migrated((store) => {
    const marks = marksOfDay(store.db, 1);
    expect(marks).toHaveLength(pairs.length);
    for (const { athleteId, mark } of marks) {
      const [reach, touch] = pairs[athleteId - 1] ?? [0, 0];
      const value = mark.state === "complete" ? mark.value : Number.NaN;
      expect(Math.abs(value - 20 * (touch - reach))).toBeLessThanOrEqual(20);
    }
    const rulesOf = connectionOf(store.db).prepare("SELECT DISTINCT rules FROM mark").all();
    expect(rulesOf).toEqual([{ rules: rulesVersion }]);
    expect(findWrongMark(store.db, 1000)).toBeNull();
    store.write([], rebuildMarks);
    expect(marksOfDay(store.db, 1)).toEqual(marks);
  });
});

test("earlier results are heights that were read: 17 in are exact again, and 43.5 cm stay", () => {
  const past = (id: number, date: string, value: number) =>
    `INSERT INTO past_mark VALUES (${id}, '${rules}', '${date}', 'vertical', '', ${value});`;
  makeBefore(
    [[2190, 2625]],
    `${past(1, "2026-01-10", rounded(68))} ${past(1, "2026-02-10", 435)}
     INSERT INTO past_mark VALUES (1, 'core cycle=240', '2026-02-10', 'core', '', 432);
     INSERT INTO past_void VALUES ('v', 1, '${rules}', '2026-03-10', 'vertical', '', 432, NULL, 'Slip', 'QA', '${at}');
     INSERT INTO past_void VALUES ('w', 1, '${rules}', '2026-04-10', 'vertical', '', 430, 432, 'Slip', 'QA', '${at}');
     INSERT INTO nameless_mark VALUES ('n', 1, 'vertical', '', '${rules}', 345, '25 to 29', 'open');
     INSERT INTO reference VALUES (1, 'Elsewhere', 'marks', 'a', 'b', '${at}');
     INSERT INTO reference_test VALUES (1, 'vertical', '', '${rules}');
     INSERT INTO reference_mark VALUES (1, 1, 'vertical', '', 'women', '25 to 29', '2026-Q1', NULL, 400, 7);`,
  );
  migrated(({ db }) => {
    const all = (sql: string) =>
      connectionOf(db)
        .prepare<[], Record<string, unknown>>(sql)
        .all()
        .map((row) => Object.values(row));
    expect(all("SELECT value FROM past_mark ORDER BY date, test")).toEqual([[68 * 127], [432], [8700]]);
    expect(all("SELECT value, instead FROM past_void ORDER BY id")).toEqual([
      [68 * 127, null],
      [8600, 68 * 127],
    ]);
    expect(all("SELECT value FROM nameless_mark")).toEqual([[6900]]);
    expect(all("SELECT low, high FROM reference_mark")).toEqual([[null, 8000]]);
    expect(() => connectionOf(db).exec("UPDATE past_mark SET value = 1")).toThrow(/append-only/);
    expect(() => connectionOf(db).exec("UPDATE attempt SET seen = '{}'")).toThrow(/append-only/);
    expect(() => connectionOf(db).exec("UPDATE nameless_mark SET value = 1")).toThrow(/append-only/);
    expect(() => connectionOf(db).exec("UPDATE past_void SET value = 1")).toThrow(/stays on record/);
  });
});

test("the taps of a heat of before are the readings of now, by what the whole lane was read in", () => {
  const heat = randomUUID();
  const event = (seq: number, lane: number, kind: string, detail: object) =>
    `INSERT INTO heat_event VALUES (${seq}, 't${seq}', '${heat}', ${lane}, '${kind}', ${seq}, '${JSON.stringify(detail)}', 'QA', '${at}');`;
  makeBefore(
    [
      [2190, 2625],
      [2197, 2610],
    ],
    `INSERT INTO heat (${heatColumns}) VALUES ('${heat}', 1, 'vertical', 2, 'gathering', '${at}', NULL, NULL, NULL, NULL, '', '', NULL);
     INSERT INTO heat_lane VALUES ('${heat}', 1, 1, 1, '');
     INSERT INTO heat_lane VALUES ('${heat}', 2, 1, 2, '');
     UPDATE heat SET state = 'running', zero_ms = 5, zero_boot = 'b', zero_wall = '${at}';
     ${event(1, 1, "reach", { mm: 2190, bodyMass: 61_000 })} ${event(2, 1, "touch", { mm: 2625 })}
     ${event(3, 2, "reach", { mm: 2197 })} ${event(4, 2, "touch", { mm: 2610 })} ${event(5, 2, "enough", {})}`,
  );
  const details = migrated(({ db }) =>
    connectionOf(db)
      .prepare<[], { detail: string }>("SELECT detail FROM heat_event ORDER BY seq")
      .all()
      .map(({ detail }) => JSON.parse(detail) as unknown),
  );
  expect(details).toEqual([
    { length: cm(219), bodyMass: 61_000 },
    { length: cm(262.5) },
    { length: inches(86.5) },
    { length: inches(102.75) },
    {},
  ]);
  expect(lengthOfMillimetres(2610)).toEqual(cm(261));
});
