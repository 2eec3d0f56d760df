import { expect, test } from "vitest";
import { connectionOf } from "../store/connection.ts";
import { refusalOf, testDesk } from "./desk.ts";
import { foundry, quarry, type WorkedDay, workedDay } from "./summary-day.ts";

type Summary = NonNullable<Awaited<ReturnType<WorkedDay["summary"]["get"]>>>;

async function told(day: WorkedDay, leagueId: number | null = null): Promise<Summary> {
  const summary = await day.summary.get({ dayId: day.dayId, leagueId });
  if (summary === null) throw new Error("There is no day.");
  return summary;
}

/** A line of the roll in short: each test's mark with its standing and verdict, or why there is none. */
function lineOf({ rows }: Summary, name: string): unknown[] {
  const row = rows.find(({ who }) => who.name === name);
  return (row?.tests ?? []).map(({ marks, gap }) => {
    const complete = marks.find(({ mark }) => mark.state === "complete");
    if (complete?.mark.state !== "complete") return gap?.kind;
    return [complete.mark.value, complete.news?.standing, complete.news?.verdict];
  });
}

test("who did what, against the last test, worked out by hand", async () => {
  const summary = await told(await workedDay());
  expect(summary.rows.map(({ who }) => [who.league, who.name])).toEqual([
    [foundry, "Ada Rill"],
    [foundry, "Bo Crank"],
    [foundry, "Cy Loop"],
    [quarry, "Di Stomp"],
    [quarry, "Ed Whirl"],
    [quarry, "Flo Dash"],
    [quarry, "Gil Spin"],
  ]);
  expect(lineOf(summary, "Ada Rill")).toEqual([
    // 26 after 20, typical error 2: 6 / (√(2 · 1.08) · 2.13) = 1.91, Φ = 0.972, just less than 0.975.
    [26, "best", "likely gain"],
    // Clockwise 4 · 7 + 3 − 2 · 0.5 = 30, the other way 4 · 7 + 1 = 29: (30 + 29) / 2 = 29.5, in quarters 118.
    [118, "first", null],
    // 42 cm after 40 is a best, of one trial of three: what the change is worth is not told.
    [8400, "best", null],
    // 95.4 s held, rounded down.
    [95, "first", null],
    // 366.8 s after 372, typical error 3 % of 369.4 s = 11.1: 5.2 / (√2 · 11.1) = 0.33, Φ = 0.63.
    [366_800, "best", "noise"],
  ]);
  // 27 done, the last three off: 24, as before.
  expect(lineOf(summary, "Bo Crank")).toEqual([
    [24, "equal", "noise"],
    ...["half-done", "not-taken", "not-taken", "not-taken"],
  ]);
  // 15 after 18: 3 / (√2 · 2) = 1.06, Φ = 0.855, between 0.8 and 0.975.
  expect(lineOf(summary, "Cy Loop")).toEqual([
    [15, "below", "likely loss"],
    ...["skipped", "left-out"],
    [61, "first", null],
    "not-finished",
  ]);
  expect(lineOf(summary, "Di Stomp")).toEqual([[31, "first", null], ...Array(4).fill("not-taken")]);
  expect(lineOf(summary, "Ed Whirl")).toEqual([[22, "first", null], ...Array(4).fill("withdrawn")]);
  expect(lineOf(summary, "Flo Dash")).toEqual(Array(5).fill("not-testing"));
  expect(lineOf(summary, "Gil Spin")).toEqual(Array(5).fill("no-show"));
});

test("the day in numbers", async () => {
  const { totals, tests } = await told(await workedDay());
  expect(totals).toEqual({
    listed: 7,
    // All but Gil.
    came: 6,
    // Ada, Bo, Cy, Di, Ed.
    measured: 5,
    // Ada.
    whole: 1,
    // Push-ups of Di and Ed, quadrant jump of Ada, planks of Ada and Cy.
    firsts: 5,
    // Push-ups, leap and circuit of Ada.
    bests: 3,
    clearGains: 0,
    // Four marks with one earlier of as many trials each: half of them a best, one of forty a clear gain.
    byChance: { bests: 2, clearGains: expect.closeTo(0.1, 9) },
  });
  expect(tests.map(({ marks }) => marks)).toEqual([5, 1, 1, 2, 1]);
  expect(tests[0]).toEqual({
    test: "push-up",
    marks: 5,
    standings: { first: 2, best: 1, equal: 1, below: 1 },
    verdicts: { noise: 1, "likely gain": 1, "likely loss": 1, "clear gain": 0, "clear loss": 0 },
  });
});

test("what is missing, of one athlete a line a reason", async () => {
  const { missing } = await told(await workedDay());
  const none = { reason: "", by: "", mark: null };
  expect(missing.map(({ who, ...rest }) => ({ name: who.name, ...rest }))).toEqual([
    { ...none, name: "Bo Crank", kind: "half-done", tests: ["agility"], mark: incomplete("ccw") },
    { ...none, name: "Bo Crank", kind: "not-taken", tests: ["vertical", "core", "endurance"] },
    { ...none, name: "Cy Loop", kind: "skipped", tests: ["agility"], reason: "Has a train", by: "OR" },
    { ...none, name: "Cy Loop", kind: "left-out", tests: ["vertical"], by: "CH" },
    {
      ...{ ...none, name: "Cy Loop", kind: "not-finished", tests: ["endurance"] },
      mark: { state: "unfinished", rounds: 2, reps: 15 },
    },
    { ...none, name: "Di Stomp", kind: "not-taken", tests: ["agility", "vertical", "core", "endurance"] },
    { ...none, name: "Ed Whirl", kind: "withdrawn", tests: ["agility", "vertical", "core", "endurance"] },
    { ...none, name: "Flo Dash", kind: "not-testing", tests: five },
    { ...none, name: "Gil Spin", kind: "no-show", tests: five },
  ]);
});

const five = ["push-up", "agility", "vertical", "core", "endurance"];
const incomplete = (...missing: string[]) => ({ state: "incomplete", missing });

test("corrections: what, when, by whom, why, and what stands instead", async () => {
  const { corrections } = await told(await workedDay());
  expect(corrections).toHaveLength(1);
  expect(corrections[0]).toMatchObject({
    attempt: {
      who: { name: "Di Stomp" },
      ...{ test: "push-up", seen: { how: "tally", reps: 30, offAtEnd: 0 }, by: "RS" },
      at: "2026-11-14T09:50:00.000Z",
      void: { reason: "Miscounted", by: "QA", at: "2026-11-14T09:56:00.000Z" },
    },
    instead: { seen: { how: "tally", reps: 31, offAtEnd: 0 }, by: "QA", void: null },
  });
});

test("how long each station took per athlete, and for whom that is not known", async () => {
  const { stations } = await told(await workedDay());
  const [pushUp, agility, vertical, core, endurance] = stations;
  expect(pushUp).toEqual({
    test: "push-up",
    // Keyed: nobody saw when an athlete began.
    atWork: null,
    // 9:10:00, 9:13:00, 9:15:30, a pause of 34.5 minutes, 9:50:00, 9:54:00 (the correction keeps 9:50): 3, 2.5 and 4 min.
    perAthlete: spread([150_000, 180_000, 240_000]),
    // The first one, and the one after the pause.
    leftOut: 2,
    fromSheets: 0,
  });
  // Ada and Bo were keyed in the same instant; before Ada there is nobody.
  expect(agility).toMatchObject({ perAthlete: spread([0]), leftOut: 1, fromSheets: 0 });
  expect(vertical).toEqual({ test: "vertical", atWork: null, perAthlete: null, leftOut: 0, fromSheets: 1 });
  // 61.2 s and 95.4 s on the heat's own clock: the middle is 78.3 s. The day's first turn is not known.
  expect(core).toEqual({
    test: "core",
    atWork: spread([61_200, 95_400]),
    perAthlete: null,
    leftOut: 2,
    fromSheets: 0,
  });
  expect(endurance).toMatchObject({ atWork: null, perAthlete: spread([420_000]), leftOut: 1 });
});

/** Of two or three values in order: the middle one, or the mean of two. */
function spread(values: readonly number[]) {
  const [lowest = 0] = values;
  const highest = values.at(-1) ?? 0;
  const median = values.length === 3 ? values[1] : (lowest + highest) / 2;
  return { count: values.length, median, lower: null, upper: null, lowest, highest };
}

test("marks by judge: a corrected mark is that of who judged", async () => {
  const { judges } = await told(await workedDay());
  expect(judges.map(({ test, judge, marks }) => [test, judge, marks.count, marks.median])).toEqual([
    // 26 and 24.
    ["push-up", { kind: "named", name: "QA" }, 2, 25],
    // 15, 22, and 31, which QA corrected and RS had judged.
    ["push-up", { kind: "named", name: "RS" }, 3, 22],
    ["agility", { kind: "named", name: "QA" }, 1, 118],
    ["vertical", { kind: "unnamed" }, 1, 8400],
    ["core", { kind: "named", name: "RS" }, 2, 78],
    ["endurance", { kind: "named", name: "QA" }, 1, 366_800],
  ]);
});

test("the typical errors that the changes were judged by", async () => {
  const { errors } = await told(await workedDay());
  expect(
    errors.map(({ test, fixed, share, assumed, pairs }) => [test, fixed, share, assumed, pairs]),
  ).toEqual([
    ["push-up", 1.5, 0.066, true, 0],
    ["agility", 3.2, 0.0214, true, 0],
    ["vertical", 200, 0.0312, true, 0],
    ["core", 3, 0.0545, true, 0],
    ["endurance", 2000, 0.0295, true, 0],
  ]);
});

test("a league's summary is that league's alone", async () => {
  const day = await workedDay();
  const summary = await told(day, day.leagueIds.quarry);
  expect(summary.league?.name).toBe(quarry);
  expect(summary.leagues.map(({ name, listed }) => [name, listed])).toEqual([
    [foundry, 3],
    [quarry, 4],
  ]);
  expect(JSON.stringify({ ...summary, leagues: [] })).not.toMatch(/Foundry|Ada|Bo Crank|Cy Loop/);
  expect(summary.totals).toEqual({
    ...{ listed: 4, came: 3, measured: 2, whole: 0, firsts: 2, bests: 0, clearGains: 0 },
    byChance: { bests: 0, clearGains: 0 },
  });
  // Ed's four minutes end with Di, who came after the pause.
  expect(summary.stations[0]).toMatchObject({ perAthlete: spread([240_000]), leftOut: 1 });
  expect(summary.judges.map(({ judge, marks }) => [judge, marks.count, marks.median])).toEqual([
    // 31 and 22.
    [{ kind: "named", name: "RS" }, 2, 26.5],
  ]);
});

test("an open day tells what is still to come", async () => {
  const day = await workedDay();
  const closed = await told(day);
  expect(closed.day.state).toBe("closed");
  day.desk.store.write(["day"], (db) => db.exec("UPDATE day SET state = 'open'"));
  const open = await told(day);
  expect(lineOf(open, "Gil Spin")).toEqual(Array(5).fill("expected"));
  expect(lineOf(open, "Di Stomp").slice(1)).toEqual(Array(4).fill("to-come"));
  expect(lineOf(open, "Ed Whirl").slice(1)).toEqual(Array(4).fill("withdrawn"));
});

test("what was taken back and not entered again is missing, with the reason", async () => {
  const day = await workedDay();
  day.desk.store.write(["day"], (db) => db.exec("UPDATE day SET state = 'open'"));
  const attemptId = attemptOf(day, 5);
  await day.station.void({ attemptId, reason: "Wrong bib", by: "QA" });
  const { missing, corrections } = await told(day);
  expect(
    missing.filter(({ who, tests }) => who.name === "Ed Whirl" && tests.includes("push-up")),
  ).toMatchObject([{ kind: "taken-back", reason: "Wrong bib", by: "QA" }]);
  expect(corrections.at(-1)).toMatchObject({ attempt: { attemptId }, instead: null });
});

function attemptOf(day: WorkedDay, bib: number): string {
  const sql = "SELECT id FROM attempt WHERE athlete_id = ?";
  return connectionOf(day.desk.store.db).prepare<[number], { id: string }>(sql).get(day.idOf(bib))?.id ?? "";
}

test("the organiser alone reads it, of days and leagues that are there", async () => {
  const day = await workedDay();
  for (const who of ["check-in", "station", "board"] as const) {
    const { summary } = day.as(who);
    for (const call of [
      summary.get({}),
      summary.sheets({}),
      summary.zip({}),
      summary.sheet({ name: "judges.csv" }),
    ]) {
      expect(await refusalOf(call)).toEqual({ key: "door.forbidden" });
    }
  }
  expect(await refusalOf(day.summary.get({ dayId: 99 }))).toEqual({ key: "summary.noDay" });
  expect(await refusalOf(day.summary.get({ leagueId: 99 }))).toEqual({ key: "summary.noLeague" });
  expect(await refusalOf(day.summary.sheet({ name: "../x" }))).toEqual({ key: "summary.noSheet" });
  const { summary } = testDesk().as("organiser");
  expect(await summary.get({})).toBeNull();
  expect(await refusalOf(summary.zip({}))).toEqual({ key: "summary.noDay" });
  // Without a day at hand it is the newest one held.
  expect((await day.summary.get({}))?.day.id).toBe(day.dayId);
  expect(day.faults).toEqual([]);
});
