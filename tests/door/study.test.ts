import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, expect, test } from "vitest";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { refusalOf } from "./desk.ts";
import { addPeople } from "./people-of-a-day.ts";
import { bring } from "./sheets.ts";
import { entry, reps } from "./station-day.ts";
import { counted, planOf, type StudyHall, sheetOf, studyHall, takeReadings } from "./study-hall.ts";

let hall: StudyHall;
beforeEach(async () => {
  hall = await studyHall();
});
afterEach(() => {
  expect(hall.faults).toEqual([]);
  hall.desk.close();
});

test("a second judge's sheet on the same attempts: what is new, and what the study shows", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  const before = await hall.study.get({ studyId: id });
  expect(before.series.map(({ judge, day, read }) => [judge, day?.id ?? null, read])).toEqual([
    ["QA", hall.dayId, 0],
    ["RS", null, 0],
  ]);
  expect([before.rows, before.result]).toEqual([[], null]);
  const { looked, taken } = await takeReadings(hall, id, sheetOf(counted.map((done) => done + 3)));
  expect(looked.counts).toEqual({ new: 6, known: 0, keptBack: 0 });
  expect(taken).toEqual(looked);
  const told = await hall.study.get({ studyId: id });
  expect(told.whole).toBe(6);
  expect(told.rows.find(({ bib }) => bib === 1)).toMatchObject({
    ...{ name: "Ada Rill", values: [{ number: "20" }, { number: "23" }] },
  });
  // Every reading of RS is three higher: no chance at all is left over.
  expect(told.result?.biases.map(({ value, word }) => [value.number, word])).toEqual([
    ["-3", "lower"],
    ["3", "higher"],
  ]);
  expect(told.result?.typicalError.value.number).toBe("0");
  expect(told.result?.pairs[0]?.points[0]).toEqual({ mean: 21.5, difference: -3 });
});

test("the same sheet again adds nothing, and another number for somebody is not imported", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  await takeReadings(hall, id, sheetOf(counted));
  const again = await takeReadings(hall, id, sheetOf(counted));
  expect(again.taken.counts).toEqual({ new: 0, known: 6, keptBack: 0 });
  const other = await takeReadings(hall, id, sheetOf([21]));
  expect(other.taken.keptBack).toEqual([
    { line: 2, reasons: [{ key: "study.twice", values: { name: "Ada Rill", held: "20" } }] },
  ]);
});

test("rows that can't be imported are told with their line and all their faults, and the others are imported", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  const sheet = "Dorsal;Flexiones\r\n1;23\r\n99;20\r\n2;many\r\n;\r\n;12\r\n3;31\r\n3;32\r\n";
  const { taken } = await takeReadings(hall, id, sheet);
  expect(taken.counts).toEqual({ new: 2, known: 0, keptBack: 4 });
  expect(taken.keptBack.map(({ line, reasons }) => [line, reasons.map(({ key }) => key)])).toEqual([
    [3, ["study.unknownBib"]],
    [4, ["units.count.whole"]],
    [6, ["sheets.row.nobody"]],
    [8, ["study.twice"]],
  ]);
});

test("a sheet whose headers don't say which column is which is read as it is said, also the next time", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  const headers = "Who,Jury B,Remarks";
  const sheet = [headers, ...counted.map((done, index) => `${index + 1},${done + 1},fine`)].join("\r\n");
  const which = { uploadId: await bring(hall, sheet), studyId: id, position: 2 };
  const first = await hall.study.lookAt({ ...which, recall: true });
  expect(first.form).toMatchObject({ missing: ["bib", "mark"], unknown: ["Who", "Jury B", "Remarks"] });
  expect(first.counts).toEqual({ new: 0, known: 0, keptBack: 0 });
  expect(await refusalOf(hall.study.takeSheet({ ...which, by: "QA" }))).toEqual({
    key: "sheets.missing.bib",
  });
  const mapping = { bib: "Who", mark: "Jury B" };
  const said = await hall.study.lookAt({ ...which, mapping });
  expect(said.form).toMatchObject({ missing: [], unknown: ["Remarks"], mapping });
  expect(said.counts).toEqual({ new: 6, known: 0, keptBack: 0 });
  expect((await hall.study.takeSheet({ ...which, mapping, by: "QA" })).counts.new).toBe(6);
  const later = { ...which, uploadId: await bring(hall, `${headers}\r\n1,21,again`) };
  expect(await hall.study.lookAt({ ...later, recall: true })).toMatchObject({
    form: { missing: [], mapping },
    counts: { new: 0, known: 1, keptBack: 0 },
  });
});

test("the line of the headers and the league of all rows are said where the sheet does not say them", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  const titled = ["Judge RS,,,", "14 March,20,x", "Number,Reps,", "01,22,"].join("\r\n");
  const which = { uploadId: await bring(hall, titled), studyId: id, position: 2, headerLine: 3 };
  expect((await hall.study.lookAt(which)).form).toMatchObject({ headerLine: 3, missing: [] });
  addPeople(hall, [{ league: "Gravel Moon", name: "Anvil Sparrow", number: "01" }], null);
  expect((await hall.study.lookAt(which)).form.missing).toEqual(["bib"]);
  const said = await hall.study.lookAt({ ...which, league: "Foundry Town" });
  expect(said).toMatchObject({ form: { missing: [] }, counts: { new: 1 } });
});

test("a sheet without anybody or without readings is refused as a whole", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  const refused = async (sheet: string) => refusalOf(takeReadings(hall, id, sheet));
  expect(await refused("mark,unit\r\n3,reps\r\n")).toEqual({ key: "sheets.missing.bib" });
  expect(await refused("bib,league\r\n3,x\r\n")).toEqual({ key: "sheets.missing.mark" });
  expect(await refused("bib,mark\r\n")).toEqual({ key: "sheets.noRows" });
});

test("a reading is typed by bib or name, once; an unusual one is asked about first", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  const typed = { studyId: id, position: 2, by: "QA" };
  const first = { ...typed, id: randomUUID(), who: "1", mark: "22" };
  expect(await hall.study.enter(first)).toEqual({ outcome: "done", name: "Ada Rill" });
  expect(await hall.study.enter(first)).toEqual({ outcome: "done", name: "Ada Rill" });
  const second = { ...typed, id: randomUUID(), who: " bo  crank ", mark: "26" };
  expect(await hall.study.enter(second)).toEqual({ outcome: "done", name: "Bo Crank" });
  const odd = { ...typed, id: randomUUID(), who: "3", mark: "150" };
  expect(await hall.study.enter(odd)).toMatchObject({ outcome: "ask" });
  const { rows } = await hall.study.get({ studyId: id });
  expect(rows.map(({ name }) => name)).toEqual(["Ada Rill", "Bo Crank"]);
  const refused = (who: string, mark: string) =>
    refusalOf(hall.study.enter({ ...typed, id: randomUUID(), who, mark }));
  expect(await refused("1", "24")).toMatchObject({ key: "study.twice" });
  expect(await refused("77", "24")).toMatchObject({ key: "study.unknownBib" });
  expect(await refused("Nobody", "24")).toMatchObject({ key: "study.nobody" });
  expect(await refused("2", "a few")).toMatchObject({ key: "units.count.whole" });
  expect(await refusalOf(hall.study.enter({ ...first, mark: "23" }))).toEqual({ key: "study.otherReading" });
});

test("a reading is corrected or cancelled with a reason, and can be entered anew after that", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  await takeReadings(hall, id, sheetOf(counted));
  const place = { studyId: id, position: 2, athleteId: hall.idOf(1), by: "QA" };
  const read = async () => (await hall.study.get({ studyId: id })).rows.find(({ bib }) => bib === 1);
  const correction = { ...place, id: randomUUID(), mark: "22", reason: "misread" };
  await hall.study.correct(correction);
  await hall.study.correct(correction);
  expect((await read())?.values[1]?.number).toBe("22");
  await hall.study.correct({ ...place, id: randomUUID(), mark: null, reason: "somebody else's" });
  expect(await read()).toBeUndefined();
  const gone = hall.study.correct({ ...place, id: randomUUID(), mark: "3", reason: "again" });
  expect(await refusalOf(gone)).toEqual({ key: "study.gone" });
  await hall.study.enter({ studyId: id, position: 2, id: randomUUID(), who: "1", mark: "21", by: "QA" });
  expect((await read())?.values[1]?.number).toBe("21");
  const held = await hall.as("organiser").people.held({ athleteId: hall.idOf(1) });
  expect(held.study_readings.map(({ value, reason }) => [value, reason])).toEqual([
    [20, ""],
    [22, "misread"],
    [null, "somebody else's"],
    [21, ""],
  ]);
});

test("all readings of a judge are cancelled at once, as after somebody else's sheet", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  await takeReadings(hall, id, sheetOf(counted));
  const clearing = { studyId: id, position: 2, by: "QA", reason: "another judge's sheet" };
  expect(await hall.study.clear(clearing)).toEqual({ cancelled: 6 });
  expect(await hall.study.clear(clearing)).toEqual({ cancelled: 0 });
  expect((await hall.study.get({ studyId: id })).rows).toEqual([]);
  expect((await takeReadings(hall, id, sheetOf(counted))).taken.counts.new).toBe(6);
});

test("a correction at the station is the study's too, and who lacks a reading is not counted", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  await takeReadings(hall, id, sheetOf([21, 25, 30, 18]));
  const replaces = { attemptId: attemptOf(1), reason: "miscounted" };
  await hall.station.enter(entry(hall.idOf(1), "push-up", reps(21), { replaces, sure: true }));
  const told = await hall.study.get({ studyId: id });
  expect(told.rows.find(({ bib }) => bib === 1)?.values.map((value) => value?.number)).toEqual(["21", "21"]);
  expect([told.whole, told.rows.length, told.result?.leftOut]).toEqual([4, 4, 0]);
  await hall.station.void({ attemptId: attemptOf(2), reason: "not done", by: "QA" });
  const after = await hall.study.get({ studyId: id });
  expect([after.whole, after.result?.leftOut]).toEqual([3, 1]);
});

test("the first judge's readings are the results that this judge alone entered", async () => {
  const replaces = { attemptId: attemptOf(1), reason: "miscounted" };
  const corrected = entry(hall.idOf(1), "push-up", reps(21), { replaces, sure: true });
  await hall.station.enter({ ...corrected, by: "KL" });
  const [day] = (await hall.study.list()).days;
  expect(day?.marks[0]?.judges).toEqual([
    { judge: "QA", count: 5 },
    { judge: "KL", count: 1 },
  ]);
  const { id } = await hall.study.plan(planOf(hall));
  await takeReadings(hall, id, sheetOf(["", 25, 31, 18, 40, 27]));
  const { whole, series } = await hall.study.get({ studyId: id });
  expect([whole, series.map(({ judge, read }) => [judge, read])]).toEqual([
    5,
    [
      ["QA", 5],
      ["RS", 5],
    ],
  ]);
});

test("a reading that can't count is refused with why, typed or in a sheet", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  await hall.station.void({ attemptId: attemptOf(2), reason: "on the knees", by: "QA" });
  const onKnees = entry(hall.idOf(2), "push-up", reps(25), { sure: true });
  await hall.station.enter({ ...onKnees, variant: "knee" });
  await hall.station.void({ attemptId: attemptOf(3), reason: "not done", by: "QA" });
  const replaces = { attemptId: attemptOf(4), reason: "miscounted" };
  const corrected = entry(hall.idOf(4), "push-up", reps(19), { replaces, sure: true });
  await hall.station.enter({ ...corrected, by: "KL" });
  const typed = { studyId: id, position: 2, by: "QA", mark: "25" };
  const refused = (who: string) => refusalOf(hall.study.enter({ ...typed, id: randomUUID(), who }));
  const why = [
    { key: "study.otherWay", values: { name: "Bo Crank", test: "push-up" } },
    { key: "study.notTested", values: { name: "Cy Loop", test: "push-up" } },
    { key: "study.notByJudge", values: { name: "Di Stomp", judge: "QA" } },
  ];
  expect([await refused("2"), await refused("3"), await refused("4")]).toEqual(why);
  const { taken } = await takeReadings(hall, id, sheetOf(counted));
  expect([taken.counts.new, taken.keptBack.map(({ line, reasons }) => [line, ...reasons])]).toEqual([
    3,
    why.map((each, at) => [at + 3, each]),
  ]);
});

test("a reading far from the other judge's is asked about once, typed, corrected or in a sheet", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  const typed = { studyId: id, position: 2, by: "QA", id: randomUUID(), who: "1", mark: "38" };
  const question = { key: "study.far", values: { name: "Ada Rill", held: "20", typed: "38" } };
  expect(await hall.study.enter(typed)).toEqual({ outcome: "ask", question });
  expect(await hall.study.enter({ ...typed, sure: true })).toMatchObject({ outcome: "done" });
  const { looked } = await takeReadings(hall, id, sheetOf([38, 25, 3]));
  expect(looked.unusual.map(({ line, why }) => [line, why.key])).toEqual([[4, "study.far"]]);
  const place = { studyId: id, position: 2, athleteId: hall.idOf(1), by: "QA", reason: "misread" };
  const correct = (mark: string) => hall.study.correct({ ...place, id: randomUUID(), mark });
  expect(await correct("37")).toMatchObject({ outcome: "ask", question: { key: "study.far" } });
  expect(await correct("22")).toMatchObject({ outcome: "done" });
});

function attemptOf(bib: number): string {
  const own = attemptsOfDay(hall.desk.store.db, hall.dayId).filter(
    ({ athleteId }) => athleteId === hall.idOf(bib),
  );
  return own.at(-1)?.id ?? "";
}

test.each<[string, (hall: StudyHall) => Parameters<typeof planOf>[1], string]>([
  ["one judge", ({ dayId }) => ({ series: [{ from: "marks", dayId }] }), "study.plan.count"],
  [
    "the same judge twice",
    () => ({ series: ["RS", "rs"].map((judge) => ({ from: "judge" as const, judge })) }),
    "study.plan.judgeTwice",
  ],
  [
    "two judges of whole days",
    ({ dayId }) => ({ series: [1, 2].map(() => ({ from: "marks" as const, dayId })) }),
    "study.plan.oneOfMarks",
  ],
  [
    "visits too far apart",
    ({ dayId }) => ({
      kind: "visits",
      series: [
        { from: "marks", dayId },
        { from: "visit", date: "2026-11-29" },
      ],
    }),
    "study.plan.tooFar",
  ],
  [
    "visits of one day",
    ({ dayId }) => ({
      kind: "visits",
      series: [
        { from: "marks", dayId },
        { from: "visit", date: "2026-11-14" },
      ],
    }),
    "study.plan.order",
  ],
  [
    "who entered these very results as the second judge",
    ({ dayId }) => ({
      series: [
        { from: "marks", dayId, judge: "qa" },
        { from: "judge", judge: "QA" },
      ],
    }),
    "study.plan.judgeOfMarks",
  ],
  [
    "a day's results of nobody in particular",
    ({ dayId }) => ({
      series: [
        { from: "marks", dayId },
        { from: "judge", judge: "RS" },
      ],
    }),
    "study.plan.noJudge",
  ],
  ["a way that the test has not", () => ({ variant: "" }), "study.plan.variant"],
  ["a day that is not there", () => ({ dayId: 99 }), "summary.noDay"],
])("%s is refused with what to do", async (_what, more, key) => {
  expect(await refusalOf(hall.study.plan(planOf(hall, more(hall))))).toMatchObject({ key });
  expect((await hall.study.list()).studies).toEqual([]);
});

test("a plan is kept once whatever is retried, and goes again only while it never had a reading", async () => {
  const planned = planOf(hall);
  await hall.study.plan(planned);
  await hall.study.plan(planned);
  const { studies, days, enough } = await hall.study.list();
  expect(studies.map(({ id, judges, whole, aim }) => [id, judges, whole, aim])).toEqual([
    [planned.id, ["QA", "RS"], 0, 20],
  ]);
  expect(days).toEqual([
    {
      ...{ id: hall.dayId, date: "2026-11-14", title: "Autumn testing day" },
      marks: [{ test: "push-up", variant: "full", judges: [{ judge: "QA", count: 6 }] }],
    },
  ]);
  expect(enough.map(({ series }) => series)).toEqual([2, 3, 4]);
  await hall.study.drop({ studyId: planned.id });
  await hall.study.drop({ studyId: planned.id });
  expect((await hall.study.list()).studies).toEqual([]);
  await hall.study.plan(planned);
  await takeReadings(hall, planned.id, sheetOf([20]));
  await hall.study.clear({ studyId: planned.id, position: 2, by: "QA", reason: "a mistake" });
  expect(await refusalOf(hall.study.drop({ studyId: planned.id }))).toEqual({ key: "study.hasReadings" });
});

test("two visits: the day's results against those brought of a week later", async () => {
  const series = [
    { from: "marks" as const, dayId: hall.dayId },
    { from: "visit" as const, date: "2026-11-21" },
  ];
  const { id } = await hall.study.plan(planOf(hall, { kind: "visits", series }));
  const sheet = "league,number,result\r\nFoundry Town,01,22\r\nFoundry Town,02,24\r\nFoundry Town,03,33\r\n";
  const { taken } = await takeReadings(hall, id, sheet);
  expect(taken.counts.new).toBe(3);
  const { result, series: told } = await hall.study.get({ studyId: id });
  expect(told.map(({ date }) => date)).toEqual(["2026-11-14", "2026-11-21"]);
  // 20 to 22, 25 to 24, 31 to 33: a mean of 1, an SD of √3, and √1.5 between two readings of one athlete.
  expect(result?.biases[1]).toMatchObject({ value: { number: "1" }, word: "few" });
  expect(result?.typicalError).toMatchObject({ value: { number: "1.2" }, degrees: 2 });
});

test("the files hold the readings, and what they show", async () => {
  const { id } = await hall.study.plan(planOf(hall));
  await takeReadings(hall, id, sheetOf([21, 26, 30, 18, 41, 27]));
  const readings = await hall.study.sheet({ studyId: id, which: "readings" });
  expect(readings.name).toBe("tapeline-study-push-up-2026-11-14-readings.csv");
  expect(readings.text).toContain("league,number,name,reading_1_QA,reading_2_RS\r\n");
  expect(readings.text).toContain("Foundry Town,01,Ada Rill,20,21\r\n");
  const { text } = await hall.study.sheet({ studyId: id, which: "results" });
  // Differences −1, −1, 1, 0, −1, 0: a mean of −⅓.
  expect(text).toMatch(/mean_difference,reading_1_QA - reading_2_RS,-0\.33333,-1\.\d+,0\.\d+,reps/);
  expect(text).toContain("\r\nathletes,,6,,,athletes\r\n");
  expect(text).not.toContain("Ada");
});

test("studies are the organiser's alone, and unknown ones are refused", async () => {
  for (const role of ["check-in", "station", "board"] as const) {
    expect(await refusalOf(hall.as(role).study.list())).toEqual({ key: "door.forbidden" });
  }
  const studyId = randomUUID();
  expect(await refusalOf(hall.study.get({ studyId }))).toEqual({ key: "study.unknown" });
  const { id } = await hall.study.plan(planOf(hall));
  const typed = { studyId: id, by: "QA", id: randomUUID(), who: "1", mark: "22" };
  expect(await refusalOf(hall.study.enter({ ...typed, position: 1 }))).toEqual({ key: "study.ofMarks" });
  expect(await refusalOf(hall.study.enter({ ...typed, position: 3 }))).toEqual({
    key: "study.unknownSeries",
  });
});
