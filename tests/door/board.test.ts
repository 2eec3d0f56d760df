import fc from "fast-check";
import { expect, test } from "vitest";
import { appRouter } from "../../electron/api/router.ts";
import { roles } from "../../electron/domain/lock/roles.ts";
import { type BoardDay, boardDay, type View } from "./board-day.ts";
import type { Invented } from "./people-of-a-day.ts";
import { hold, jump, reps, trial } from "./station-day.ts";

/** Everything about them is text that stands nowhere else, so that it can be searched for. */
const ash: Invented = {
  ...{ league: "Foundry Town", name: "Ash Velvet", number: "7391", birthYear: 1987 },
  ...{ category: "women", board: "name", share: true },
};
const briar: Invented = {
  ...{ league: "Foundry Town", name: "Briar Knox", number: "8264", birthYear: 1979 },
  ...{ category: "men", board: "bib" },
};
const cinder: Invented = {
  ...{ league: "Quarry Lane", name: "Cinder Rue", number: "9157", birthYear: 2009 },
  ...{ category: "open", board: "hidden", guardianConsent: true },
};
const never = ["7391", "8264", "9157", "1987", "1979", "2009", "women", '"men', "guardian", "share"];

const wall = (view: View, code: string) => view.walls.find((each) => each.test === code)?.rows ?? [];
const text = (view: View) => JSON.stringify(view);

/** Three who each beat their spring push-ups by 3 (bib 1), 5 (bib 2) and 8 (bib 3). */
async function threeBests(): Promise<BoardDay> {
  const day = await boardDay([ash, briar, cinder]);
  for (const bib of [1, 2, 3]) day.past(bib, "push-up", 20);
  await day.enter(1, "push-up", reps(23));
  await day.enter(2, "push-up", reps(25));
  await day.enter(3, "push-up", reps(28));
  return day;
}

test("a name, a bib alone, or nothing: what the board says of a person follows each of the three consents", async () => {
  const day = await threeBests();
  const view = await day.view();
  expect(view.newest.map(({ label, gain }) => [label, gain])).toEqual([
    [
      { as: "bib", bib: 2 },
      { number: "5", unit: "reps" },
    ],
    [
      { as: "name", name: "Ash Velvet" },
      { number: "3", unit: "reps" },
    ],
  ]);
  expect(wall(view, "push-up").map(({ label }) => label)).toEqual([
    { as: "bib", bib: 2 },
    { as: "name", name: "Ash Velvet" },
  ]);
  for (const name of ["Briar Knox", "Cinder Rue", "Quarry Lane", ...never]) {
    expect(text(view)).not.toContain(name);
  }
  expect(view.totals).toEqual({ bests: 2, bestsByChance: 1, firsts: 0, testsDone: 2, athletesTested: 2 });
  expect(day.faults).toEqual([]);
});

test("a consent changed at the table changes the board at once, and tells it so", async () => {
  const day = await threeBests();
  const told: string[] = [];
  day.desk.news.listen(({ topics }) => told.push(...topics));
  await day.consent(1, "hidden");
  await day.consent(2, "name");
  await day.consent(3, "bib");
  expect(told).toEqual(["people", "entrants", "people", "entrants", "people", "entrants"]);
  const view = await day.view();
  expect(view.newest.map(({ label }) => label)).toEqual([
    { as: "bib", bib: 3 },
    { as: "name", name: "Briar Knox" },
  ]);
  expect(text(view)).not.toContain("Ash Velvet");
  await day.consent(1, "bib");
  expect((await day.view()).newest.at(-1)?.label).toEqual({ as: "bib", bib: 1 });
});

test("whoever leaves early keeps the bests that they made", async () => {
  const day = await boardDay([briar]);
  day.past(1, "push-up", 20);
  await day.enter(1, "push-up", reps(25));
  await day.as("organiser").checkIn.withdraw({ athleteId: day.ids[0] ?? 0 });
  expect((await day.view()).newest.map(({ label }) => label)).toEqual([{ as: "bib", bib: 1 }]);
});

test("a wall is in order of the gain over the own best: not of the mark, and nobody below is on it", async () => {
  const people = ["Ann Orr", "Bev Pike", "Cat Quill", "Dot Rowe", "Eve Sand", "Fay Tull"];
  const day = await boardDay(
    people.map((name) => ({ league: "Foundry Town", name, board: "name" as const })),
  );
  const before: [bib: number, reps: number][] = [
    [1, 40],
    [2, 12],
    [3, 30],
    [4, 25],
    [6, 18],
  ];
  for (const [bib, value] of before) day.past(bib, "push-up", value);
  await day.enter(1, "push-up", reps(41));
  await day.enter(2, "push-up", reps(19));
  await day.enter(3, "push-up", reps(29));
  await day.enter(4, "push-up", reps(25));
  await day.enter(5, "push-up", reps(50));
  await day.enter(6, "push-up", reps(19));
  const view = await day.view();
  expect(
    wall(view, "push-up").map(({ label, standing, gain, written }) => [label, standing, gain, written]),
  ).toEqual([
    [{ as: "name", name: "Bev Pike" }, "best", { number: "7", unit: "reps" }, { number: "19", unit: "reps" }],
    [{ as: "name", name: "Ann Orr" }, "best", { number: "1", unit: "reps" }, { number: "41", unit: "reps" }],
    [{ as: "name", name: "Fay Tull" }, "best", { number: "1", unit: "reps" }, { number: "19", unit: "reps" }],
    [{ as: "name", name: "Dot Rowe" }, "equal", null, { number: "25", unit: "reps" }],
    [{ as: "name", name: "Eve Sand" }, "first", null, { number: "50", unit: "reps" }],
  ]);
  expect(text(view)).not.toContain("Cat Quill");
  expect(view.newest.map(({ label }) => label)).toEqual([
    { as: "name", name: "Fay Tull" },
    { as: "name", name: "Bev Pike" },
    { as: "name", name: "Ann Orr" },
  ]);
  expect(view.totals).toEqual({ bests: 3, bestsByChance: 3, firsts: 1, testsDone: 6, athletesTested: 6 });
});

test("each test's gain is written in its unit, faster being the gain of a circuit", async () => {
  const day = await boardDay([ash]);
  day.past(1, "push-up", 20);
  day.past(1, "agility", 110);
  day.past(1, "vertical", 40 * 200);
  day.past(1, "core", 90);
  day.past(1, "endurance", 371_000);
  await day.enter(1, "push-up", reps(21));
  // 31 − 1 and 29 landings: 29.5 in the mean, 118 quarters; 8 quarters more than 27.5.
  await day.enter(1, "agility", trial("cw", 7, 3, 2), trial("ccw", 7, 1));
  await day.enter(1, "vertical", jump(2100, 2515));
  await day.enter(1, "core", hold(160));
  await day.enter(1, "endurance", { finished: true, time: 362_640 });
  const view = await day.view();
  expect(view.newest.map(({ test: code, written, gain }) => [code, written.number, gain])).toEqual([
    ["endurance", "6:02.7", { number: "8.3", unit: "s" }],
    ["core", "2:40", { number: "1:10", unit: "min:s" }],
    ["vertical", "41.5", { number: "1.5", unit: "cm" }],
    ["agility", "29.5", { number: "2", unit: "landings" }],
    ["push-up", "21", { number: "1", unit: "reps" }],
  ]);
  const inInches = await day.as("board").board.view({ lengths: "in" });
  // 15 mm are 0.59 in and 415 mm are 16.34 in: no quarters, so in hundredths.
  expect(inInches.newest[2]).toMatchObject({
    written: { number: "16.34", unit: "in" },
    gain: { number: "0.59", unit: "in" },
  });
});

test("the verdict and its spreads are of the gain that is shown, over the own best and not over the last test", async () => {
  const day = await boardDay([ash, briar]);
  // Best 20, then a bad day with 10: 21 is one rep over the best, and eleven over the last.
  day.past(1, "push-up", 20, "2026-01-10");
  day.past(1, "push-up", 10, "2026-04-11");
  day.past(2, "push-up", 20);
  await day.enter(1, "push-up", reps(21));
  await day.enter(2, "push-up", reps(27));
  const view = await day.view();
  // Whole days move by 0.3 typical errors: √2 · √(1 + 0.3²) of one. 1 / (1.476 · √(1.5² + (0.066 · 20.5)²)) = 0.335, a chance
  // of 0.63; 7 / (1.476 · √(1.5² + (0.066 · 23.5)²)) = 2.197, of 0.986.
  expect(view.newest.map(({ spreads, verdict }) => [spreads, verdict])).toEqual([
    [2.2, "clear gain"],
    [0.34, "noise"],
  ]);
});

test("calls are by bib, with the name of those who agreed to it, and without those who hide", async () => {
  const day = await boardDay([ash, briar, cinder]);
  const { station } = day.as("station");
  for (const athleteId of day.ids) await station.callAthlete({ athleteId, test: "push-up" });
  const view = await day.view();
  expect(view.calls).toEqual([
    {
      test: "push-up",
      called: [
        { bib: 1, name: "Ash Velvet" },
        { bib: 2, name: null },
      ],
    },
  ]);
  await station.uncall({ athleteId: day.ids[0] ?? 0, test: "push-up" });
  await station.uncall({ athleteId: day.ids[1] ?? 0, test: "push-up" });
  expect((await day.view()).calls).toEqual([]);
});

test("what somebody hidden does changes nothing on the board, not even a count", async () => {
  const day = await boardDay([
    ash,
    { league: "Foundry Town", name: "Dell Grant", board: "hidden" },
    { league: "Foundry Town", name: "Fern Pike", board: "name" },
    briar,
  ]);
  for (const bib of [1, 2, 3]) day.past(bib, "push-up", 20);
  for (const bib of [1, 3, 4]) await day.enter(bib, "push-up", reps(18 + 2 * bib));
  const before = await day.view();
  expect(before.totals).toEqual({ bests: 1, bestsByChance: 1, firsts: 1, testsDone: 3, athletesTested: 3 });
  await day.enter(2, "push-up", reps(25));
  await day.enter(2, "agility", trial("cw", 8, 0), trial("ccw", 8, 0));
  expect(await day.view()).toEqual(before);
  await day.consent(2, "bib");
  expect((await day.view()).totals).toEqual({
    bests: 2,
    bestsByChance: 2,
    firsts: 2,
    testsDone: 5,
    athletesTested: 4,
  });
});

test("property: whatever hidden athletes do, the board is what it is without them", async () => {
  const consent = fc.constantFrom("name", "bib", "hidden");
  const person = fc.record({
    board: consent,
    past: fc.option(fc.integer({ min: 10, max: 40 })),
    today: fc.integer({ min: 10, max: 40 }),
  });
  const asked = fc.asyncProperty(fc.array(person, { minLength: 1, maxLength: 6 }), async (people) => {
    const invented = people.map(({ board }, index) => ({
      league: `League ${index % 2}`,
      name: `Skater ${index}`,
      board,
    }));
    const views = [];
    for (const all of [true, false]) {
      const day = await boardDay(invented);
      for (const [index, { board, past, today }] of people.entries()) {
        if (past !== null) day.past(index + 1, "push-up", past);
        if (all || board !== "hidden") await day.enter(index + 1, "push-up", reps(today));
      }
      // Numbers of attempts are of the whole day, and no figure on the wall.
      views.push(
        JSON.parse(JSON.stringify(await day.view(), (key, value) => (key === "seq" ? undefined : value))),
      );
    }
    expect(views[0]).toEqual(views[1]);
  });
  await fc.assert(asked, { numRuns: 60 });
});

test("a test of two directions counts once both are there, and a corrected best leaves the board", async () => {
  const day = await boardDay([ash]);
  day.past(1, "push-up", 20);
  day.past(1, "agility", 100);
  await day.enter(1, "push-up", reps(28));
  const [best] = (await day.as("station").station.view({ test: "push-up" })).recent;
  const attemptId = best?.attempt.attemptId ?? "";
  await day.as("station").station.void({ attemptId, reason: "another athlete", by: "QA" });
  expect(await day.view()).toMatchObject({ newest: [], totals: { bests: 0, testsDone: 0 } });
  await day.enter(1, "push-up", reps(19));
  await day.enter(1, "agility", trial("cw", 8, 0));
  const half = await day.view();
  expect([half.newest, wall(half, "agility"), half.totals.testsDone]).toEqual([[], [], 1]);
  await day.enter(1, "agility", trial("ccw", 8, 0));
  expect((await day.view()).newest.map(({ test: code }) => code)).toEqual(["agility"]);
});

test("without a day there is nothing, and a day closed today stays on the wall", async () => {
  const day = await threeBests();
  await day.as("organiser").day.close({ dayId: day.dayId });
  const closed = await day.view();
  expect([closed.day?.state, closed.newest.length]).toEqual(["closed", 2]);
  day.clock.at = new Date("2026-11-15T12:00:00Z");
  expect(await day.view()).toEqual({
    ...{ hidden: false, demo: false, day: null, newest: [], firsts: [], calls: [], heats: [] },
    walls: ["push-up", "agility", "vertical", "core", "endurance"].map((code) => ({
      ...{ test: code, rows: [], part: 1, parts: 1 },
    })),
    totals: { bests: 0, bestsByChance: 0, firsts: 0, testsDone: 0, athletesTested: 0 },
  });
});

test("a hidden board is sent nothing of the day until somebody at the desk shows it again", async () => {
  const day = await threeBests();
  const heard: unknown[] = [];
  day.desk.news.listen(({ topics }) => heard.push(...topics));
  await day.as("station").board.hide({ hidden: true });
  await day.as("station").board.hide({ hidden: true });
  const blank = await day.view();
  expect(blank).toMatchObject({ hidden: true, day: null, newest: [], calls: [], totals: { bests: 0 } });
  expect(blank.walls.flatMap(({ rows }) => rows)).toEqual([]);
  expect(text(blank)).not.toContain("Ash Velvet");
  await day.as("organiser").board.hide({ hidden: false });
  expect((await day.view()).newest).toHaveLength(2);
  expect(heard).toEqual(["board", "board"]);
});

test("every role may look at the board, and the board may ask for nothing else of the day", async () => {
  const day = await threeBests();
  // A second judge would read there what the first one has seen.
  const everybody = roles.filter((role) => role !== "locked" && role !== "second-judge");
  for (const who of everybody) expect((await day.as(who).board.view()).newest).toHaveLength(2);
  const open: string[] = [];
  for (const name of Object.keys(appRouter._def.procedures)) {
    const method = appRouter._def.procedures[name as never] as { _def: { type: string } };
    if (method._def.type === "subscription") continue;
    const url = `app://board/trpc/${name}`;
    const post = { method: "POST", body: "{}", headers: { "content-type": "application/json" } };
    const request = new Request(url, method._def.type === "query" ? {} : post);
    if ((await day.handle(request, "board")).status !== 403) open.push(name);
  }
  expect(open.sort()).toEqual(["board.view", "day.current", "language.current"]);
});
