import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { RehearsalStage, RehearsedDay } from "../../electron/api/door/rehearsal-shapes.ts";
import { demoSheetsIn } from "../../electron/host/demo-sheets.ts";
import { rehearser } from "../../electron/rehearsal/at-the-desk.ts";
import { connectionOf } from "../store/connection.ts";
import { type TestDesk, testClock, testDesk } from "./desk.ts";
import { type Bench, bench, demo, demoFolder, rowsOf, sheet } from "./rehearsing.ts";

type Octets = Parameters<ReturnType<TestDesk["as"]>["intake"]["upload"]>[0];

let folder: string;
let hall: TestDesk;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "rehearsal-test-"));
  const clock = testClock();
  // The date of the demonstration's own rehearsal, so that the two can be compared.
  clock.at = new Date("2026-09-19T08:00:00Z");
  const ground = {
    folder: join(folder, "rehearsals"),
    nativeBinding: undefined,
    demoSheets: demoSheetsIn(demoFolder),
  };
  hall = testDesk(join(folder, "tapeline.sqlite"), clock, { rehearse: rehearser(ground, () => clock.at) });
});

afterEach(() => {
  hall.desk.close();
  rmSync(folder, { recursive: true });
});

async function upload(text: string | Uint8Array): Promise<string> {
  const stream = new Blob([typeof text === "string" ? text : new Uint8Array(text)]).stream();
  return (await hall.as("organiser").intake.upload(stream as unknown as Octets)).uploadId;
}

interface Texts {
  readonly roster: string | Uint8Array;
  readonly past?: string | Uint8Array;
  readonly results?: string | Uint8Array;
}

async function rehearse({ roster, past, results }: Texts): Promise<RehearsalStage[]> {
  const ids = {
    rosters: [{ uploadId: await upload(roster) }],
    past: past === undefined ? null : { uploadId: await upload(past) },
    results: results === undefined ? null : { uploadId: await upload(results) },
  };
  const stages: RehearsalStage[] = [];
  for await (const stage of await hall.as("organiser").rehearsal.run(ids)) stages.push(stage);
  return stages;
}

function outcomeOf(stages: readonly RehearsalStage[]): RehearsedDay {
  const last = stages.at(-1);
  if (last?.stage !== "done") throw new Error(`It ended with ${JSON.stringify(last)}.`);
  return last.rehearsed;
}

/** Every row of every table of the hall's own store. */
function wholeStore(): unknown {
  const { db } = hall.desk.store;
  const sql = "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name";
  const tables = connectionOf(db).prepare<[], { name: string }>(sql).all();
  return tables.map(({ name }) => [name, connectionOf(db).prepare(`SELECT * FROM "${name}"`).all()]);
}

const demoSheet = (name: string) => new Uint8Array(readFileSync(join(demoFolder, name)));

const roster = sheet(`
  league,       name,         number, birth_year, category, board, share
  Foundry Town, Ash Velvet,   7,      1994,       women,    name,  yes
  Foundry Town, Briar Knox,   8,      1996,       open,     bib,   yes
  Quarry Lane,  Cinder Rue,   9,      2010,       women,    name,  no
`);

test("at the desk a rehearsal comes to the same as the command, and leaves the own store as it was", async () => {
  const bed: Bench = bench();
  try {
    const before = wholeStore();
    const stages = await rehearse({
      roster: demoSheet("roster.csv"),
      past: demoSheet("past.csv"),
      results: demoSheet("results.csv"),
    });
    const { sheets, marks, bundle, keptBackSheet, foreseen } = outcomeOf(stages);
    expect(
      stages.flatMap((stage) => (stage.stage === "working" ? `${stage.step} ${stage.done}` : [])),
    ).toEqual(["roster 0", "past 1", "checkIn 2", "results 3", "end 4"]);
    await bed.run(demo);
    const written = rowsOf(bed.out("marks.csv"));
    const standing = (name: string) => written.filter(({ best }) => best === name).length;
    const names = ["first", "best", "equal", "below"] as const;
    expect(marks).toEqual({
      ...Object.fromEntries(names.map((name) => [name, standing(name)])),
      open: standing(""),
    });
    expect(marks.best).toBeGreaterThan(20);
    expect(keptBackSheet.text).toBe(bed.out("rejected.csv"));
    expect(sheets.map(({ kind }) => kind)).toEqual(["roster", "past", "results"]);
    expect(bundle.rows + bundle.held).toBeGreaterThan(0);
    // What was foreseen of a day that took so long: from later points nearer to it, and never before now.
    const { ends = 0, points = [] } = foreseen ?? {};
    expect(points.map(({ at }) => Math.round((100 * at) / ends))).toEqual([20, 40, 60, 80]);
    for (const { at, from, until } of points)
      expect([at, from, until].toSorted((a, b) => a - b)).toEqual([at, from, until]);
    const [first, last] = [points[0], points.at(-1)].map((point) => (point?.until ?? 0) - (point?.from ?? 0));
    expect(last).toBeLessThan(first ?? 0);
    expect(wholeStore()).toEqual(before);
    expect(readdirSync(join(folder, "rehearsals"))).toEqual([]);
  } finally {
    bed.remove();
  }
});

test("rows that stay outside are told with their line and what stands there", async () => {
  const stages = await rehearse({
    roster: `${roster}Quarry Lane,Dell Pike,10,19x4,women,name,yes\r\n`,
  });
  const { sheets, admitted, askGuardian } = outcomeOf(stages);
  expect(sheets).toHaveLength(2);
  expect(sheets[0]).toMatchObject({ kind: "roster", taken: 3, keptBack: 1, refused: null });
  expect(sheets[0]?.keptBackRows[0]).toMatchObject({ line: 5, field: "birth_year" });
  expect(sheets[0]?.keptBackRows[0]?.cells).toContain("19x4");
  // Whoever needs a guardian's consent is named; the day is tried with them all the same.
  expect(admitted).toBe(3);
  expect(askGuardian.map(({ name }) => name)).toEqual(["Cinder Rue"]);
});

test("it is held as the planned day will be: on its date, by its rules", async () => {
  const organiser = hall.as("organiser");
  await organiser.day.create({ date: "2029-03-03", title: "Spring", sure: true });
  const { parameters } =
    (await organiser.day.protocols()).find(({ test: code }) => code === "vertical") ?? {};
  await organiser.day.setProtocol({ test: "vertical", parameters: { ...Object(parameters), trials: 1 } });
  const results = sheet(`
    league,       number, test,     standing_reach, touch_reach, unit
    Foundry Town, 7,      vertical, 210,            250,         cm
    Foundry Town, 7,      vertical, 210,            251,         cm
    Foundry Town, 7,      vertical, 210,            252,         cm
  `);
  const { date, admitted, sheets, askGuardian } = outcomeOf(await rehearse({ roster, results }));
  expect(date).toBe("2029-03-03");
  // Born in 2010: of age by then. And where one jump is all, a second and a third are too many.
  expect([admitted, askGuardian]).toEqual([3, []]);
  expect(sheets[1]).toMatchObject({ kind: "results", taken: 1, keptBack: 2 });
  expect((await organiser.day.current()).day).toMatchObject({ title: "Spring", state: "planned" });
});

test("a roster that can't be used ends it with its sentence; past results that can't are told beside the rest", async () => {
  const refused = await rehearse({ roster: "Crew,Who\nGravel Moon,Anvil\n" });
  expect(refused.at(-1)).toMatchObject({ stage: "refused", sheet: "roster" });
  const { sheets } = outcomeOf(await rehearse({ roster, past: "nothing,of,this\n1,2,3\n" }));
  expect(sheets[1]).toMatchObject({ kind: "past", taken: 0, keptBack: 0 });
  expect(sheets[1]?.refused?.key).toMatch(/^sheets\./);
  expect(readdirSync(join(folder, "rehearsals"))).toEqual([]);
});

test("without a results sheet results are invented, named as such, and a whole day is held", async () => {
  const { sheets, marks, keptBackSheet } = outcomeOf(await rehearse({ roster }));
  // Six attempts a person: the jumps are two.
  expect(sheets[1]).toMatchObject({
    kind: "results",
    file: "",
    invented: true,
    taken: 18,
    keptBack: 0,
    unusual: 0,
  });
  expect(sheets[0]).toMatchObject({ invented: false });
  expect(marks).toEqual({ first: 15, best: 0, equal: 0, below: 0, open: 0 });
  expect(rowsOf(keptBackSheet.text)).toEqual([]);
});

/** Rehearses with these rosters, each under a name of its own, and what is said of it. */
async function rehearseRosters(
  rosters: readonly (readonly [
    name: string,
    text: string,
    said?: { league?: string; headerLine?: number },
  ])[],
): Promise<RehearsalStage[]> {
  const sheets = [];
  for (const [name, text, said = {}] of rosters) sheets.push({ name, said, uploadId: await upload(text) });
  const stages: RehearsalStage[] = [];
  const ids = { rosters: sheets, past: null, results: null };
  for await (const stage of await hall.as("organiser").rehearsal.run(ids)) stages.push(stage);
  return stages;
}

const titled = "Gravel Moon, our list\n\n#,Derby name\n4,Anvil Row\n5,Bex Storm\n";

test("the rosters of three leagues make one day, each told by its file", async () => {
  const { sheets, admitted } = outcomeOf(
    await rehearseRosters([
      ["foundry.csv", roster],
      ["gravel.csv", titled, { league: "Gravel Moon" }],
      ["empty.csv", "nothing,of,this\n1,2,3\n"],
    ]),
  );
  expect(sheets.map(({ kind, file, taken }) => [kind, file, taken])).toEqual([
    ["roster", "foundry.csv", 3],
    ["roster", "gravel.csv", 2],
    ["roster", "empty.csv", 0],
    ["results", "", 30],
  ]);
  expect(sheets[2]?.refused?.key).toMatch(/^sheets\./);
  expect(admitted).toBe(5);
});

test("a roster without a league ends it with what has to be said, and goes in once that is said", async () => {
  const last = (await rehearseRosters([["gravel.csv", titled]])).at(-1);
  if (last?.stage !== "refused") throw new Error("It was not refused.");
  expect(last).toMatchObject({ file: "gravel.csv", sentence: { key: "sheets.missing.league" } });
  expect(last.form).toMatchObject({ headerLine: 3, missing: ["league"] });
  expect(last.form?.start.map(({ line }) => line)).toContain(1);
  const said = outcomeOf(await rehearseRosters([["gravel.csv", titled, { league: "Gravel Moon" }]]));
  expect(said.sheets[0]).toMatchObject({ taken: 2, keptBack: 0 });
});

test("who stops listening half way leaves nothing behind", async () => {
  const ids = { rosters: [{ uploadId: await upload(roster) }], past: null, results: null };
  for await (const stage of await hall.as("organiser").rehearsal.run(ids)) {
    expect(readdirSync(join(folder, "rehearsals"))).toHaveLength(1);
    if (stage.stage === "working" && stage.step === "checkIn") break;
  }
  expect(readdirSync(join(folder, "rehearsals"))).toEqual([]);
});

test("not while a day is open, and not for anybody but the organiser", async () => {
  await hall.as("organiser").day.create({ date: "2026-09-19", title: "Autumn" });
  await hall.as("organiser").day.open();
  expect(await rehearse({ roster })).toEqual([
    { stage: "refused", sheet: "roster", sentence: { key: "rehearsal.open" }, file: "", form: null },
  ]);
  const ids = { rosters: [{ uploadId: crypto.randomUUID() }], past: null, results: null };
  for (const who of ["check-in", "station", "board"] as const) {
    await expect(hall.as(who).rehearsal.run(ids)).rejects.toThrow("This screen can't do that.");
  }
});
