import { randomUUID } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { restoreStore } from "../../electron/backups/restore.ts";
import { applicationId } from "../../electron/store/connection/examine.ts";
import { heatOfAttempt } from "../../electron/store/migrations/0006-heat-of-attempt.ts";
import { migrations } from "../../electron/store/migrations/list.ts";
import { cm } from "../lengths.ts";
import { testDesk } from "./desk.ts";
import { by, fromHeats, type Hall, hallAt, liveOf, sent, startedHeat } from "./heat-hall.ts";
import { entry, hold, jump } from "./station-day.ts";

let folder = "";
const opened: Hall[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-before-"));
});
afterEach(() => {
  for (const hall of opened.splice(0)) hall.desk.close();
  rmSync(folder, { recursive: true, force: true });
});
const file = () => join(folder, "tapeline.sqlite");

/** The same rows in a store of the version in which an attempt's heat stood in its id alone. */
function asBefore(store: string): Buffer {
  const old = join(folder, "before.sqlite");
  const db = new SqliteDatabase(old);
  const version = migrations.indexOf(heatOfAttempt);
  for (const sql of migrations.slice(0, version)) db.exec(sql);
  db.exec(`PRAGMA foreign_keys = OFF; ATTACH '${store}' AS newer; DELETE FROM athlete_highest;`);
  const tables = db
    .prepare<[], { name: string }>(
      "SELECT name FROM main.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'",
    )
    .all();
  for (const { name } of tables) {
    const columns = (db.pragma(`table_info("${name}")`) as { name: string }[]).map((column) => column.name);
    db.exec(`INSERT INTO main.${name} (${columns}) SELECT ${columns} FROM newer.${name}`);
  }
  expect(db.pragma("table_info(attempt)")).toHaveLength(13);
  db.pragma(`application_id = ${applicationId}`);
  db.pragma(`user_version = ${version}`);
  db.close();
  return readFileSync(old);
}

/** The store as a backup of that version brings it back, at a desk that is started on it. */
function broughtBack(hall: Hall): Hall {
  hall.desk.close();
  opened.splice(opened.indexOf(hall), 1);
  restoreStore({ file: file() }, asBefore(file()), hall.clock.at);
  const desk = testDesk(file(), hall.clock);
  const again = { ...hall, ...desk, heat: desk.as("station").heat, station: desk.as("station").station };
  opened.push(again);
  return again;
}

/** Without who gathered the heat: earlier versions did not keep it. */
async function seenOf(hall: Hall, test: "core" | "vertical") {
  const summary = await hall.as("organiser").summary.get({});
  const live = await hall.heat.view({ test });
  // A version of before knew neither.
  if (live.heat !== null) Object.assign(live.heat, { gatheredBy: "", startDoubtMs: null });
  return { live, station: await hall.station.view({ test }), summary };
}

test("planks that an earlier version entered, corrected and moved to somebody else stand as they did", async () => {
  const hall = await hallAt("core", file());
  opened.push(hall);
  const heatId = await startedHeat(hall, "core", 3);
  hall.clock.tick(62_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 61_000), sent(2, "stop", 61_500)] });
  const [first = "", second = ""] = fromHeats(hall).map(({ id }) => id);
  const correct = (bib: number, seconds: number, attemptId: string) =>
    hall.station.enter(
      entry(hall.idOf(bib), "core", hold(seconds), { sure: true, replaces: { attemptId, reason: "Slip" } }),
    );
  await correct(1, 65, first);
  await correct(4, 66, second);
  const before = await seenOf(hall, "core");
  const [one, two] = liveOf(before.live).lane;
  expect(one).toMatchObject({
    prior: [],
    entered: [{ attempt: { replaces: first, void: null }, corrected: true }],
  });
  expect(two).toMatchObject({ prior: [], entered: [{ attempt: { attemptId: second }, corrected: false }] });

  const again = broughtBack(hall);
  expect(await seenOf(again, "core")).toEqual(before);
  const stop = sent(3, "stop", 63_000);
  hall.clock.tick(2000);
  await again.heat.tap({ heatId, by, events: [stop] });
  await again.heat.undo({ heatId, eventId: stop.id, id: randomUUID(), by });
  expect(fromHeats(again).map(({ result, heatId: of, void: ended }) => [result, of, ended === null])).toEqual(
    [
      ["mark", heatId, false],
      ["mark", heatId, false],
      ["mark", heatId, false],
    ],
  );
});

test("leaps of an earlier version go on: what stands counts, and the last one can still be taken back", async () => {
  const hall = await hallAt("vertical", file());
  opened.push(hall);
  await hall.station.enter(entry(hall.idOf(1), "vertical", jump(2100, 2490), { sure: true }));
  const { heatId } = await hall.heat.place({
    ...{ test: "vertical", heatId: randomUUID(), lanes: 2, by, evenResting: true },
    who: { athleteId: hall.idOf(1) },
  });
  const tap = (...events: ReturnType<typeof sent>[]) => hall.heat.tap({ heatId, by, events });
  hall.clock.tick(60_000);
  await tap(sent(1, "reach", 10_000, { length: cm(210) }), sent(1, "touch", 20_000, { length: cm(250) }));
  const [made = ""] = fromHeats(hall).map(({ id }) => id);
  const replaces = { attemptId: made, reason: "Misread" };
  await hall.station.enter(entry(hall.idOf(1), "vertical", jump(2100, 2505), { sure: true, replaces }));
  const last = sent(1, "touch", 60_000, { length: cm(251) });
  await tap(last);
  const before = await seenOf(hall, "vertical");
  expect(liveOf(before.live).lane[0]?.prior).toEqual([jump(2100, 2490)]);

  const again = broughtBack(hall);
  expect(await seenOf(again, "vertical")).toEqual(before);
  await again.heat.undo({ heatId, eventId: last.id, id: randomUUID(), by });
  expect(fromHeats(again).map(({ void: ended }) => ended === null)).toEqual([false, false]);
});
