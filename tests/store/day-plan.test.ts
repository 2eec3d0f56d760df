import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { usualSettings } from "../../electron/domain/plan/settings.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { keepPlan, keepTold, planOfDay } from "../../electron/store/tables/day-plans.ts";
import { addDay, discardDay } from "../../electron/store/tables/days.ts";
import { connectionOf } from "./connection.ts";

let folder = "";
let store: Store;
let dayId = 0;
const file = () => join(folder, "tapeline.sqlite");
const at = "2026-11-14T09:00:00.000Z";
const settings = { ...usualSettings(), begins: "10:15", boundMinutes: 4, middleIsFree: true };
const told = {
  ...{ begins: "10:15", athletes: 49, holdsUp: "vertical" as const },
  end: { from: 9000, middle: 9600, until: 10_500 },
  waits: { mean: 240, longest: 1500 },
};

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-plan-"));
  store = openStore({ file: file() });
  const day = { date: "2026-11-14", title: "Autumn", restMinutes: 5 };
  dayId = store.write(["day"], (db) => addDay(db, day, []));
});
afterEach(() => {
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

const keep = () => store.write(["plan"], (db) => keepPlan(db, dayId, { settings, seed: 77, savedAt: at }));

test("what is planned and what was told of it are there again after a restart", () => {
  expect(planOfDay(store.db, dayId)).toBeUndefined();
  keep();
  store.write(["plan"], (db) => keepTold(db, dayId, told, at));
  store.close();
  store = openStore({ file: file() });
  expect(planOfDay(store.db, dayId)).toEqual({ settings, seed: 77, savedAt: at, told, toldAt: at });
});

test("a plan that is saved again keeps its seed and what was told, until that is forgotten", () => {
  keep();
  store.write(["plan"], (db) => keepTold(db, dayId, told, at));
  const other = { settings: { ...settings, judges: 3 }, seed: 5, savedAt: at };
  store.write(["plan"], (db) => keepPlan(db, dayId, other));
  expect(planOfDay(store.db, dayId)).toMatchObject({ seed: 77, told, settings: { judges: 3 } });
  store.write(["plan"], (db) => keepTold(db, dayId, null, at));
  expect(planOfDay(store.db, dayId)).toMatchObject({ told: null, toldAt: null });
});

test("a day that is thrown away takes its plan along", () => {
  keep();
  store.write(["day"], (db) => discardDay(db, dayId, at));
  expect(planOfDay(store.db, dayId)).toBeUndefined();
});

test("settings that are not by the schema are not read", () => {
  keep();
  const db = connectionOf(store.db);
  db.exec("UPDATE day_plan SET settings = json_set(settings, '$.begins', 'at nine')");
  expect(() => planOfDay(store.db, dayId)).toThrow(/begins/);
});
