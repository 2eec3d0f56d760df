import { unzipSync } from "fflate";
import { expect, test } from "vitest";
import { restored } from "../../electron/sheets/formula.ts";
import { connectionOf } from "../store/connection.ts";
import { addPeople } from "./people-of-a-day.ts";
import { reps } from "./station-day.ts";
import { emptyDay, foundry, key, quarry, rowsOfSheet, type WorkedDay, workedDay } from "./summary-day.ts";

type Row = Readonly<Record<string, string>>;

/** The zip's files, by name. */
async function filesOf(day: WorkedDay, leagueId: number | null = null) {
  const { name, bytes } = await day.summary.zip({ dayId: day.dayId, leagueId });
  const files = unzipSync(Buffer.from(bytes, "base64"));
  const texts = Object.entries(files).map(
    ([file, content]) => [file, Buffer.from(content).toString()] as const,
  );
  return { name, texts: new Map(texts) };
}

function rowsOf(texts: ReadonlyMap<string, string>, file: string): Row[] {
  return rowsOfSheet(texts.get(file) ?? "");
}

const sheets = [
  "athletes.csv",
  "athletes_marks.csv",
  "league_changes.csv",
  "missing.csv",
  "attempts.csv",
  "stations.csv",
  "station_times.csv",
  "judges.csv",
  "typical_errors.csv",
];

test("one zip holds a dictionary and every sheet, which read back as the day was", async () => {
  const day = await workedDay();
  const { name, texts } = await filesOf(day);
  expect(name).toBe("tapeline-summary-2026-11-14.zip");
  expect([...texts.keys()]).toEqual(["data-dictionary.md", ...sheets]);
  const [ada] = rowsOf(texts, "athletes.csv");
  expect(ada).toMatchObject({
    ...{ league: foundry, number: "01", name: "Ada Rill", bib: "1" },
    ...{ push_up: "26", push_up_variant: "full", push_up_previous: "20", push_up_change: "6" },
    ...{ push_up_verdict: "likely gain", push_up_standing: "best", push_up_missing: "" },
    ...{ agility: "29.5", agility_previous: "", agility_change: "", agility_standing: "first" },
    // One trial, and nobody knows the best of how many it was before.
    ...{ vertical: "42", vertical_previous: "40", vertical_change: "", vertical_verdict: "" },
    // 366.8 − 372: faster is below zero, and stays a number.
    ...{ core: "95", endurance: "366.8", endurance_previous: "372", endurance_change: "-5.2" },
  });
  expect(rowsOf(texts, "athletes.csv")).toHaveLength(7);
});

test("the long sheet has a row an athlete and test, with the reason where there is no mark", async () => {
  const rows = rowsOf((await filesOf(await workedDay())).texts, "athletes_marks.csv");
  expect(rows).toHaveLength(7 * 5);
  expect(rows.find(({ name, test: code }) => name === "Cy Loop" && code === "push-up")).toEqual({
    ...{ league: foundry, number: "03", name: "Cy Loop", bib: "3", test: "push-up", variant: "full" },
    ...{ missing: "", mark: "15", unit: "reps", better: "higher", standing: "below", best_before: "18" },
    ...{
      previous: "18",
      previous_date: "2026-04-11",
      level_before: "18",
      change: "-3",
      verdict: "likely loss",
    },
  });
  expect(rows.filter(({ name }) => name === "Cy Loop").map(({ missing }) => missing)).toEqual([
    ...["", "skipped", "left-out", "", "not-finished"],
  ]);
  expect(rowsOf((await filesOf(await workedDay())).texts, "missing.csv")).toHaveLength(
    // Bo 4, Cy 3, Di 4, Ed 4, Flo 5, Gil 5.
    25,
  );
});

test("attempts in the order of entry, also what no longer stands, with when, by whom and why", async () => {
  const rows = rowsOf((await filesOf(await workedDay())).texts, "attempts.csv");
  expect(rows).toHaveLength(14);
  expect(rows[3]).toMatchObject({
    ...{ order: "4", name: "Di Stomp", test: "push-up", reps: "30", missed_at_end: "0", entered_by: "RS" },
    ...{ entered_at: "2026-11-14T09:50:00.000Z", source: "station", stands: "no", void_by: "QA" },
    ...{ void_at: "2026-11-14T09:56:00.000Z", void_reason: "Miscounted", corrects: "" },
  });
  expect(rows[5]).toMatchObject({ order: "6", reps: "31", stands: "yes", void_reason: "", corrects: "4" });
  expect(rows.find(({ test: code }) => code === "vertical")).toMatchObject({
    ...{ standing_reach: "210", touch_reach: "252", unit: "cm", source: "sheet" },
  });
  expect(rows.filter(({ test: code }) => code === "core")).toMatchObject([
    { name: "Cy Loop", time: "61.2", source: "heat", entered_by: "RS" },
    { name: "Ada Rill", time: "95.4" },
  ]);
  expect(rows.at(-1)).toMatchObject({ finished: "no", rounds_done: "2", reps_done: "15", time: "" });
});

test("times of the stations, and the ones behind them", async () => {
  const { texts } = await filesOf(await workedDay());
  const rows = rowsOf(texts, "stations.csv");
  expect(rows.find(({ test: code, measure }) => code === "push-up" && measure === "per_athlete")).toEqual({
    ...{ test: "push-up", measure: "per_athlete", athletes: "3", median: "180" },
    ...{ lower_quartile: "", upper_quartile: "", shortest: "150", longest: "240" },
    ...{ not_known: "2", from_sheets: "0" },
  });
  expect(rows.find(({ test: code, measure }) => code === "core" && measure === "at_work")).toMatchObject({
    ...{ athletes: "2", median: "78.3", shortest: "61.2", longest: "95.4", not_known: "" },
  });
  const known = rowsOf(texts, "station_times.csv").map((row) => [
    row.name,
    row.test,
    row.at_work,
    row.per_athlete,
  ]);
  expect(known).toEqual([
    ["Ada Rill", "core", "95.4", ""],
    ["Bo Crank", "push-up", "", "180"],
    ["Bo Crank", "agility", "", "0"],
    ["Cy Loop", "push-up", "", "150"],
    ["Cy Loop", "core", "61.2", ""],
    ["Cy Loop", "endurance", "", "420"],
    ["Ed Whirl", "push-up", "", "240"],
  ]);
});

test("the same data give the same bytes, and a sheet by itself is the one in the zip", async () => {
  const day = await workedDay();
  const first = await day.summary.zip({});
  day.clock.pass(60);
  expect(await day.summary.zip({})).toEqual(first);
  const { texts } = await filesOf(day);
  const listed = await day.summary.sheets({});
  expect(listed.map(({ name }) => name)).toEqual([...texts.keys()]);
  for (const { name, rows } of listed) {
    const alone = await day.summary.sheet({ name });
    expect(alone).toEqual({ name: `tapeline-summary-2026-11-14-${name}`, text: texts.get(name) });
    if (rows !== null) expect(rowsOf(texts, name)).toHaveLength(rows);
  }
});

test("the dictionary explains every column of every sheet, and says that they hold names", async () => {
  const { texts } = await filesOf(await workedDay());
  const dictionary = texts.get("data-dictionary.md") ?? "";
  expect(dictionary).toContain("These sheets hold names.");
  for (const file of sheets) {
    const part = dictionary.split(`## ${file}\n`)[1]?.split("\n## ")[0] ?? "";
    const explained = part
      .split("\n")
      .flatMap((line) => /^\| (?!column )([a-z_]+) \| .* \| \S.* \|$/.exec(line)?.[1] ?? []);
    const [header = ""] = (texts.get(file) ?? "").replace(/^\uFEFF/, "").split("\r\n");
    expect(explained).toEqual(header.split(","));
  }
});

test("a league's zip holds that league alone, in every file", async () => {
  const day = await workedDay();
  const { name, texts } = await filesOf(day, day.leagueIds.quarry);
  expect(name).toBe("tapeline-summary-2026-11-14-quarry-lane.zip");
  for (const text of texts.values()) expect(text).not.toMatch(/Foundry|Ada Rill|Bo Crank|Cy Loop/);
  expect(texts.get("data-dictionary.md")).toContain(`Only ${quarry} is in them.`);
  expect(rowsOf(texts, "athletes.csv").map((row) => row.name)).toEqual([
    ...["Di Stomp", "Ed Whirl", "Flo Dash", "Gil Spin"],
  ]);
});

/** What a spreadsheet would run, tear or misread. */
const hostile = [
  "=1+1",
  "-2+3",
  "@SUM(A1)",
  '+"x"',
  'Comma, "Quote"',
  "Line\nEnd",
  "Åse Øy 🛼",
  "'=already",
  "＝full",
];

test("hostile names and reasons do no harm, tear nothing, and come back as they were", async () => {
  const day = await emptyDay();
  const league = '=HYPERLINK("x"), *| Näht';
  const ids = addPeople(
    day,
    hostile.map((name, index) => ({ league, name, number: String(index) })),
    day.dayId,
  );
  await key(day, 1, "push-up", [reps(20)]);
  const first =
    connectionOf(day.desk.store.db).prepare<[], { id: string }>("SELECT id FROM attempt").get()?.id ?? "";
  await day.station.void({ attemptId: first, reason: '=cmd|" /C calc"!A0\r\n,', by: "QA" });
  const { texts } = await filesOf(day);
  const names = rowsOf(texts, "athletes.csv").map((row) => restored(row.name ?? ""));
  expect(names.filter((name) => hostile.includes(name)).sort()).toEqual([...hostile].sort());
  for (const text of texts.values()) expect(text).not.toMatch(/(?:^\uFEFF?|\r\n|,)"?[=+@\t＝]/u);
  expect(restored(rowsOf(texts, "attempts.csv")[0]?.void_reason ?? "")).toBe(
    '=cmd|" /C calc"!A0\r\n,'.trim(),
  );
  const own = (await day.summary.get({}))?.leagues.find(({ name }) => name === league)?.id ?? 0;
  const { name, texts: alone } = await filesOf(day, own);
  expect(name).toBe("tapeline-summary-2026-11-14-hyperlink-x-naht.zip");
  // Nothing of a name is read as markdown.
  expect(alone.get("data-dictionary.md")).toContain('=HYPERLINK\\("x"\\), \\*\\| Näht');
  expect(ids).toHaveLength(hostile.length);
  expect(day.faults).toEqual([]);
});

test("a day with nobody on its list has sheets with headers alone", async () => {
  const day = await emptyDay();
  day.desk.store.write(["entrants"], (db) => db.exec("DELETE FROM entrant"));
  const { texts } = await filesOf(day);
  for (const file of ["athletes.csv", "athletes_marks.csv", "missing.csv", "attempts.csv", "judges.csv"]) {
    expect(rowsOf(texts, file)).toEqual([]);
    expect(texts.get(file)).toMatch(/^\uFEFF[a-z_,]+\r\n$/);
  }
  const told = await day.summary.get({});
  expect(told?.totals).toEqual({
    listed: 0,
    came: 0,
    measured: 0,
    whole: 0,
    firsts: 0,
    bests: 0,
    clearGains: 0,
    byChance: { bests: 0, clearGains: 0 },
  });
});
