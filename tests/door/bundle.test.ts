import { createHash } from "node:crypto";
import { strFromU8, unzipSync } from "fflate";
import Papa from "papaparse";
import { beforeAll, describe, expect, test } from "vitest";
import { roles } from "../../electron/domain/lock/roles.ts";
import { countBundle } from "../checks/count-bundle.ts";
import { addToDay, enter, holdDay, skaters } from "./bundle-hall.ts";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";

type Preview = NonNullable<Awaited<ReturnType<ReturnType<TestDesk["as"]>["bundle"]["preview"]>>>;

type Wish = Partial<Pick<Preview, "kind">> & { k?: 5 | 11 };

async function previewOf(hall: TestDesk, wish: Wish = {}): Promise<Preview> {
  const preview = await hall.as("organiser").bundle.preview(wish);
  if (preview === null) throw new Error("There is a day, so there is a preview.");
  return preview;
}

async function writtenBy(
  hall: TestDesk,
  wish: Wish = {},
): Promise<{ name: string; bytes: Uint8Array; sha256: string; logged: number | null }> {
  const { day, sha256 } = await previewOf(hall, wish);
  const written = await hall.as("organiser").bundle.write({ ...wish, dayId: day.id, previewSha256: sha256 });
  return { ...written, bytes: Buffer.from(written.bytes, "base64") };
}

function records(text: string): Record<string, string>[] {
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}

describe("a day of 33 skaters", () => {
  const hall = testDesk();
  let preview: Preview;
  beforeAll(async () => {
    await holdDay(hall);
    preview = await previewOf(hall);
  });

  test("the preview says what would leave, worked by hand", () => {
    // 28 share and may: of each a quadrant jump, a leap and a plank, and of twenty a full push-up.
    expect([preview.rows.length, preview.athletes]).toEqual([28 * 3 + 20, 28]);
    expect(preview.name).toBe("tapeline-bundle-2026-Q4.zip");
    const of = (code: string) => preview.tests.find(({ test: name }) => name === code);
    // Leaps of 30 + i / 2 cm for i = 0 to 21 and 27 to 32: ten under 35, ten from 35 to 39.5, eight from 40 on. Type 7 of 28:
    // places 6.75, 13.5 and 20.25 from 0, so in the lowest part, in the middle one, and in the highest.
    expect(of("vertical")).toMatchObject({
      ...{ variant: "", unit: "cm", better: "higher", able: 28, told: 28, step: 5 },
      levels: { quarter: 0, category: 1, ageBand: 1, leagueSize: 0 },
      parts: [
        { low: null, high: 35, n: 10 },
        { low: 35, high: 40, n: 10 },
        { low: 40, high: null, n: 8 },
      ],
      quartiles: {
        lower: { low: null, high: 35 },
        median: { low: 35, high: 40 },
        upper: { low: 40, high: null },
      },
    });
    // Full push-ups, i + 10 reps where 4 does not divide i: 11 12 13 15 16 17 19, 20 21 23 24 25 27 28 29, 31 37 39 40 41.
    expect(of("push-up")).toMatchObject({
      ...{ variant: "full", able: 20, told: 20, step: 10 },
      parts: [
        { low: null, high: 20, n: 7 },
        { low: 20, high: 30, n: 8 },
        { low: 30, high: null, n: 5 },
      ],
    });
    // So the smallest group is the five from 30 reps on.
    expect(preview.kReached).toBe(5);
  });

  test("the preview says what stays and why, and nothing is lost between the two", () => {
    // Eight on the knees are too few for two groups of five.
    expect(preview.held).toEqual([
      { reason: "no-share", marks: 12, athletes: 3 },
      { reason: "no-guardian", marks: 8, athletes: 2 },
      { reason: "too-few", marks: 8, athletes: 8 },
    ]);
    const held = preview.held.reduce((sum, { marks }) => sum + marks, 0);
    expect(preview.rows.length + held).toBe(33 * 4);
  });

  test("it says what a neighbour would find without all this, and what is left to find", () => {
    expect(preview.before).toMatchObject({ bibs: 28, bibsCertain: 28, likeliestGuess: 1 });
    expect(preview.after).toMatchObject({ bibs: 28, bibsCertain: 0, bibsExposed: 0, unique: 0 });
    expect(preview.after.likeliestGuess).toBeLessThanOrEqual(1 / 5);
    expect(preview.after.largest).toBe(1 / 5);
    // 14 groups in 104 rows.
    expect(preview.after.mean).toBeCloseTo(14 / 104, 12);
  });

  test("looking again changes nothing and writes nothing", async () => {
    expect(await previewOf(hall)).toEqual(preview);
    expect(await hall.as("organiser").bundle.log()).toEqual([]);
  });

  test("what is written is what was looked at, row by row and byte by byte", async () => {
    const { name, bytes, sha256 } = await writtenBy(hall);
    expect(sha256).toBe(preview.sha256);
    expect(createHash("sha256").update(bytes).digest("hex")).toBe(sha256);
    expect([name, bytes.length]).toEqual([preview.name, preview.bytes]);
    const files = Object.entries(unzipSync(bytes)).map(([file, content]) => [file, strFromU8(content)]);
    expect(files).toEqual(preview.files.map(({ name: file, text }) => [file, text]));
    const rows = records(preview.files.find((file) => file.name === "marks.csv")?.text ?? "");
    const bound = (text = "") => (text === "" ? null : Number(text));
    expect(rows.map((row) => [row.id, row.test, bound(row.mark_low), bound(row.mark_high)])).toEqual(
      preview.rows.map(({ id, marks: [mark] }) => [id, mark?.test, mark?.low, mark?.high]),
    );
  });

  test("an independent counter finds the same k and l in the written file", async () => {
    const counted = countBundle((await writtenBy(hall)).bytes);
    expect(counted).toMatchObject({ rows: 104, k: 5, groups: 14, told: { k: 5, kReached: 5 } });
    expect([counted.k, counted.l]).toEqual([preview.kReached, preview.lReached]);
  });
});

describe("for the open web, and linked", () => {
  test.each([
    ["marks", 11],
    ["profiles", 5],
  ] as const)(
    "%s in groups of %d: the counter finds as many, and the file says what it is",
    async (kind, k) => {
      const hall = testDesk();
      await holdDay(hall);
      const preview = await previewOf(hall, { kind, k });
      const { bytes, name } = await writtenBy(hall, { kind, k });
      const counted = countBundle(bytes);
      expect(counted.k).toBeGreaterThanOrEqual(k);
      expect([counted.k, counted.l, counted.rows]).toEqual([
        preview.kReached,
        preview.lReached,
        preview.rows.length,
      ]);
      expect(name).toBe(kind === "marks" ? "tapeline-bundle-2026-Q4.zip" : "tapeline-profiles-2026-Q4.zip");
      expect(await hall.as("organiser").bundle.log()).toMatchObject([{ k }]);
      expect(preview.after.bibsExposed).toBe(0);
    },
  );

  test("groups of any other size are refused at the door", async () => {
    const hall = testDesk();
    await holdDay(hall);
    await expect(hall.as("organiser").bundle.preview({ k: 4 as 5 })).rejects.toMatchObject({
      code: "BAD_REQUEST",
    });
  });
});

test("an export is noted with when, which day, k and hash; a retry gets the same file and is noted once", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall);
  const first = await writtenBy(hall);
  hall.clock.pass(5);
  const again = await hall.as("organiser").bundle.write({ dayId, previewSha256: first.sha256 });
  expect(Buffer.from(again.bytes, "base64").equals(first.bytes)).toBe(true);
  expect(again.logged).toBeNull();
  expect(await hall.as("organiser").bundle.log()).toEqual([
    {
      ...{ id: 1, saved: true },
      at: "2026-11-14T09:00:00.000Z",
      day: expect.objectContaining({ id: dayId }),
      k: 5,
      sha256: first.sha256,
    },
  ]);
});

test("a bundle that was made and saved nowhere stays in the log, and another one of that day may leave", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall, skaters.slice(0, 12));
  const { bundle } = hall.as("organiser");
  const { sha256: previewSha256 } = await previewOf(hall);
  const { logged } = await bundle.write({ dayId, previewSha256 });
  await bundle.notSaved({ logged: logged ?? 0 });
  await bundle.notSaved({ logged: logged ?? 0 });
  expect((await bundle.log()).map(({ saved }) => saved)).toEqual([false]);
  addToDay(hall, dayId, skaters.slice(12));
  const other = await previewOf(hall);
  expect(other.earlier).toBeNull();
  await writtenBy(hall);
  expect((await bundle.log()).map(({ saved }) => saved)).toEqual([true, false]);
  expect(await refusalOf(bundle.notSaved({ logged: 77 }))).toEqual({ key: "bundle.noEntry" });
});

test("the same file again, then not saved: the first one has left all the same", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall, skaters.slice(0, 12));
  const { bundle } = hall.as("organiser");
  const { sha256: previewSha256 } = await previewOf(hall);
  await bundle.write({ dayId, previewSha256 });
  expect((await bundle.write({ dayId, previewSha256 })).logged).toBeNull();
  expect((await previewOf(hall)).earlier).toMatchObject({ same: true });
});

test("once something changed, what was previewed is not written and nothing is noted", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall);
  const before = await previewOf(hall);
  hall.desk.store.write(["people"], (db) => db.exec("UPDATE athlete SET share = 0 WHERE id = 1"));
  const call = hall.as("organiser").bundle.write({ dayId, previewSha256: before.sha256 });
  expect(await refusalOf(call)).toEqual({ key: "bundle.changed" });
  expect(await hall.as("organiser").bundle.log()).toEqual([]);
  expect((await writtenBy(hall)).sha256).not.toBe(before.sha256);
});

test("one lonely circuit more leaves no trace in the file, not even in a count", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall);
  const before = await previewOf(hall);
  hall.desk.store.write(["attempts"], (db) => enter(db, dayId, 1, "endurance", 0));
  const after = await previewOf(hall);
  expect(after.held.at(-1)).toEqual({ reason: "too-few", marks: 9, athletes: 8 });
  expect(after.sha256).toBe(before.sha256);
});

test("before and after one more athlete: the second bundle is refused, so that there is nothing to subtract", async () => {
  for (const newcomer of skaters.slice(12, 28)) {
    const hall = testDesk();
    const dayId = await holdDay(hall, skaters.slice(0, 12));
    const first = await writtenBy(hall);
    addToDay(hall, dayId, [newcomer]);
    const second = await previewOf(hall);
    const isOther = second.sha256 !== first.sha256;
    expect(second.earlier).toMatchObject({ k: 5, same: !isOther });
    const again = hall.as("organiser").bundle.write({ dayId, previewSha256: second.sha256 });
    if (isOther) expect(await refusalOf(again)).toEqual({ key: "bundle.second" });
    else expect((await again).bytes).toBe(Buffer.from(first.bytes).toString("base64"));
    expect((await hall.as("organiser").bundle.log()).map(({ sha256 }) => sha256)).toEqual([first.sha256]);
  }
});

test("nor may the same day leave once more in other groups, or linked: two views could be laid side by side", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall);
  await writtenBy(hall, { k: 11 });
  for (const wish of [{ k: 5 }, { kind: "profiles", k: 5 }] as const) {
    const { sha256, rows, earlier } = await previewOf(hall, wish);
    expect(rows.length).toBeGreaterThan(0);
    expect(earlier).toMatchObject({ k: 11, same: false });
    const call = hall.as("organiser").bundle.write({ ...wish, dayId, previewSha256: sha256 });
    expect(await refusalOf(call)).toEqual({ key: "bundle.second" });
  }
  expect((await previewOf(hall, { k: 11 })).earlier).toMatchObject({ same: true });
});

test("the same day makes the same bytes in another store, in whatever order people came", async () => {
  const forth = testDesk();
  const back = testDesk();
  await holdDay(forth);
  await holdDay(back, skaters.toReversed());
  expect((await writtenBy(back)).bytes).toEqual((await writtenBy(forth)).bytes);
});

test("without a day there is nothing to preview; an unknown day is refused", async () => {
  const { as } = testDesk();
  expect(await as("organiser").bundle.preview()).toBeNull();
  expect(await refusalOf(as("organiser").bundle.preview({ dayId: 77 }))).toEqual({ key: "bundle.noDay" });
});

test("a closed day is still there to be shared, the newest first", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall, skaters.slice(0, 12));
  await hall.as("organiser").day.close({ dayId });
  expect((await previewOf(hall)).day).toMatchObject({ id: dayId, state: "closed" });
});

test("when everything stays there is no file to write", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall, skaters.slice(18, 22));
  const { rows, held, kReached, sha256 } = await previewOf(hall);
  expect([rows, kReached]).toEqual([[], null]);
  expect(held).toEqual([{ reason: "too-few", marks: 16, athletes: 4 }]);
  const call = hall.as("organiser").bundle.write({ dayId, previewSha256: sha256 });
  expect(await refusalOf(call)).toEqual({ key: "bundle.empty" });
  expect(await hall.as("organiser").bundle.log()).toEqual([]);
});

test("a bundle of the demonstration says so in its name and in its files", async () => {
  const hall = testDesk();
  await hall.as("organiser").day.openDemo();
  const { name, files } = await previewOf(hall);
  expect(name).toBe("tapeline-bundle-demo-2026-Q4.zip");
  expect(JSON.parse(files[0]?.text ?? "")).toMatchObject({
    name: "tapeline-marks-demo-2026-q4",
    demo: true,
  });
  expect(files.find((file) => file.name === "codebook.md")?.text).toContain("These athletes are made up");
});

test.each(roles.filter((role) => role !== "organiser" && role !== "locked"))(
  "%s may neither look, write nor read the log",
  async (role) => {
    const { bundle } = testDesk().as(role);
    const forbidden = { key: "door.forbidden" };
    expect(await refusalOf(bundle.preview())).toEqual(forbidden);
    expect(await refusalOf(bundle.write({ dayId: 1, previewSha256: "0".repeat(64) }))).toEqual(forbidden);
    expect(await refusalOf(bundle.notSaved({ logged: 1 }))).toEqual(forbidden);
    expect(await refusalOf(bundle.log())).toEqual(forbidden);
  },
);

test("over the wire: a Request from the board is turned away, the organiser's is answered", async () => {
  const hall = testDesk();
  await holdDay(hall, skaters.slice(0, 12));
  const ask = () => new Request("http://desk/trpc/bundle.preview");
  expect((await hall.handle(ask(), "board")).status).toBe(403);
  const answer = await hall.handle(ask(), "organiser");
  expect(answer.status).toBe(200);
  expect(await answer.text()).toContain("tapeline-bundle-2026-Q4.zip");
  expect(hall.faults).toEqual([]);
});
