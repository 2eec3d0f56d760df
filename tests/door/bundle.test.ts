import { createHash } from "node:crypto";
import { strFromU8, unzipSync } from "fflate";
import Papa from "papaparse";
import { beforeAll, describe, expect, test } from "vitest";
import { roles } from "../../electron/api/roles.ts";
import { attemptsOfAthlete } from "../../electron/store/attempts.ts";
import { voidAttempt } from "../../electron/store/record.ts";
import { countClasses } from "../unit/privacy/counter.ts";
import { enter, holdDay, skaters } from "./bundle-hall.ts";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";

type Preview = NonNullable<Awaited<ReturnType<ReturnType<TestDesk["as"]>["bundle"]["preview"]>>>;

async function previewOf(hall: TestDesk): Promise<Preview> {
  const preview = await hall.as("organiser").bundle.preview();
  if (preview === null) throw new Error("There is a day, so there is a preview.");
  return preview;
}

async function writtenBy(hall: TestDesk): Promise<{ name: string; bytes: Uint8Array; sha256: string }> {
  const { day, sha256 } = await previewOf(hall);
  const written = await hall.as("organiser").bundle.write({ dayId: day.id, previewSha256: sha256 });
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
    expect([preview.rows.length, preview.athletes]).toEqual([78, 23]);
    expect(preview.kReached).toBe(5);
    expect(preview.name).toBe("tapeline-bundle-2026-Q4.zip");
    // Leaps of 30 + i / 2 cm for the 23 who stay: i = 0 to 17 and 28 to 32; places 5.5, 11 and 16.5 of 0 to 22.
    expect(preview.summaries.find(({ test: of }) => of === "vertical")).toEqual({
      test: "vertical",
      variant: "",
      unit: "cm",
      better: "higher",
      n: 23,
      lower: 32.75,
      median: 35.5,
      upper: 38.25,
    });
    // Nine full push-ups: a count, no quartiles.
    expect(preview.summaries.find(({ test: of }) => of === "push-up")).toMatchObject({
      variant: "full",
      n: 9,
      lower: null,
      median: null,
      upper: null,
    });
  });

  test("the preview says what stays and why, and nothing is lost between the two", () => {
    expect(preview.held).toEqual([
      { reason: "no-share", rows: 12, athletes: 3 },
      { reason: "no-guardian", rows: 8, athletes: 2 },
      { reason: "small-class", rows: 34, athletes: 19 },
    ]);
    const held = preview.held.reduce((sum, { rows }) => sum + rows, 0);
    expect(preview.rows.length + held).toBe(33 * 4);
    expect(preview.smallClasses.every(({ athletes }) => athletes < 5)).toBe(true);
    expect(preview.smallClasses.reduce((sum, { athletes }) => sum + athletes, 0)).toBe(34);
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
    expect(rows.map(({ id, mark }) => [id, Number(mark)])).toEqual(
      preview.rows.map(({ id, mark }) => [id, mark]),
    );
  });

  test("an independent counter finds the same k in the written sheet", () => {
    const rows = records(preview.files.find(({ name }) => name === "marks.csv")?.text ?? "");
    const columns = ["test", "variant", "age_band", "category", "quarter"];
    expect(countClasses(rows, columns, "mark").k).toBe(preview.kReached);
  });
});

test("an export is noted with when, which day, k and hash; a retry gets the same file and is noted once", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall);
  const first = await writtenBy(hall);
  hall.clock.pass(5);
  const again = await hall.as("organiser").bundle.write({ dayId, previewSha256: first.sha256 });
  expect(Buffer.from(again.bytes, "base64").equals(first.bytes)).toBe(true);
  expect(await hall.as("organiser").bundle.log()).toEqual([
    {
      at: "2026-11-14T09:00:00.000Z",
      day: expect.objectContaining({ id: dayId }),
      k: 5,
      sha256: first.sha256,
    },
  ]);
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
  expect(after.held.at(-1)).toEqual({ reason: "small-class", rows: 35, athletes: 19 });
  expect(after.sha256).toBe(before.sha256);
});

test("two bundles of one day can't be laid side by side by their ids", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall, skaters.slice(0, 12));
  const first = await previewOf(hall);
  await writtenBy(hall);
  // As many rows as before: only one leap was corrected.
  hall.desk.store.write(["attempts"], (db) => {
    const [leap] = attemptsOfAthlete(db, dayId, 1).filter((attempt) => attempt.test === "vertical");
    voidAttempt(db, leap?.id ?? "", { reason: "misread", by: "QJX", at: "2026-11-14T11:00:00.000Z" });
    enter(db, dayId, 1, "vertical", 20);
  });
  const second = await previewOf(hall);
  expect(second.rows.length).toBe(first.rows.length);
  const known = new Set(first.rows.map(({ id }) => id));
  expect(second.rows.filter(({ id }) => known.has(id))).toEqual([]);
  expect(await previewOf(hall)).toEqual(second);
  const { sha256 } = await hall.as("organiser").bundle.write({ dayId, previewSha256: second.sha256 });
  expect((await hall.as("organiser").bundle.log()).map((entry) => entry.sha256)).toEqual([
    sha256,
    first.sha256,
  ]);
});

test("the same day and the same chance make the same bytes, in whatever order people came", async () => {
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
  expect(held).toEqual([{ reason: "small-class", rows: 16, athletes: 4 }]);
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
    name: "tapeline-bundle-demo-2026-q4",
    demo: true,
  });
  expect(files.find((file) => file.name === "codebook.md")?.text).toContain("These athletes are invented");
});

test.each(roles.filter((role) => role !== "organiser"))(
  "%s may neither look, write nor read the log",
  async (role) => {
    const { bundle } = testDesk().as(role);
    const forbidden = { key: "door.forbidden" };
    expect(await refusalOf(bundle.preview())).toEqual(forbidden);
    expect(await refusalOf(bundle.write({ dayId: 1, previewSha256: "0".repeat(64) }))).toEqual(forbidden);
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
