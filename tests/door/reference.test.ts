import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { roles } from "../../electron/domain/lock/roles.ts";
import { connectionOf } from "../store/connection.ts";
import { makeBundle, plain, pushUps, tamper, textsOf, zipOf } from "../unit/reference/making.ts";
import { holdDay } from "./bundle-hall.ts";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";

const bundle = makeBundle({ rows: plain });

/** The door makes a stream of the file that a client sends; its type is the client's. */
function file(bytes: Uint8Array): Blob {
  return new Blob([new Uint8Array(bytes)]).stream() as unknown as Blob;
}

function bring(hall: TestDesk, bytes: Uint8Array) {
  return hall.as("organiser").reference.bring(file(bytes));
}

/** Brings a bundle; returns the id by which it can be added. */
async function idOf(hall: TestDesk, bytes: Uint8Array): Promise<string> {
  const brought = await bring(hall, bytes);
  return "bundleId" in brought ? brought.bundleId : "";
}

async function add(hall: TestDesk, bytes: Uint8Array, origin: string) {
  const bundleId = await idOf(hall, bytes);
  return hall.as("organiser").reference.add({ bundleId, origin });
}

/** All that the store holds of bundles from elsewhere. */
function rowsOf({ desk }: TestDesk): unknown[] {
  const all = (table: string) =>
    connectionOf(desk.store.db).prepare<[], unknown>(`SELECT * FROM ${table}`).all();
  return [...all("reference"), ...all("reference_test"), ...all("reference_mark")];
}

describe("a bundle from elsewhere", () => {
  test("is looked at without being kept, then added under its origin, then listed", async () => {
    const hall = testDesk();
    const brought = await bring(hall, bundle.bytes);
    expect(brought).toMatchObject({
      ...{ kind: "marks", marks: 30, quarters: ["2026-Q1"], known: null },
      tests: [{ test: "push-up", variant: "full", marks: 30, sameRules: true }],
    });
    expect(rowsOf(hall)).toEqual([]);
    const { reference } = hall.as("organiser");
    const bundleId = "bundleId" in brought ? brought.bundleId : "";
    const added = await reference.add({ bundleId, origin: "  Northern halls " });
    expect(added).toEqual({ added: true, origin: "Northern halls" });
    expect(await reference.list()).toEqual([
      {
        ...{ id: 1, origin: "Northern halls", addedAt: "2026-11-14T09:00:00.000Z", kind: "marks", marks: 30 },
        ...{ quarters: ["2026-Q1"], inTableOf: null },
        tests: [{ test: "push-up", variant: "full", marks: 30, sameRules: true }],
      },
    ]);
  });

  test("brought twice, or packed anew, or added twice at once, is kept once", async () => {
    const hall = testDesk();
    await add(hall, bundle.bytes, "North");
    const before = rowsOf(hall);
    const packedAnew = zipOf(textsOf(bundle), 6);
    expect(await bring(hall, packedAnew)).toMatchObject({ known: "North" });
    expect(await add(hall, bundle.bytes, "South")).toEqual({ added: false, origin: "North" });
    expect(await add(hall, packedAnew, "South")).toEqual({ added: false, origin: "North" });
    expect(rowsOf(hall)).toEqual(before);
  });

  test("is removed with everything of it, twice without harm, and may come again", async () => {
    const hall = testDesk();
    await add(hall, bundle.bytes, "North");
    await add(hall, makeBundle({ rows: plain, seed: 2 }).bytes, "South");
    const { reference } = hall.as("organiser");
    expect(await reference.remove({ id: 1 })).toEqual({ removed: true });
    expect(await reference.remove({ id: 1 })).toEqual({ removed: false });
    expect((await reference.list()).map(({ origin, marks }) => [origin, marks])).toEqual([["South", 30]]);
    expect(JSON.stringify(rowsOf(hall))).not.toContain('"reference_id":1');
    expect(await add(hall, bundle.bytes, "North")).toMatchObject({ added: true });
  });

  test("held by other rules is kept, and it is said that it is not compared", async () => {
    const hall = testDesk();
    const other = makeBundle({ rows: plain, bpm: 50 });
    expect(await bring(hall, other.bytes)).toMatchObject({ tests: [{ sameRules: false }] });
  });

  test("of linked profiles leaves the links behind", async () => {
    const hall = testDesk();
    const marks = [pushUps(20, null), { test: "core", variant: "", low: null, high: 60 } as const];
    await add(hall, makeBundle({ kind: "profiles", rows: [{ count: 21, marks }] }).bytes, "North");
    const [kept] = await hall.as("organiser").reference.list();
    expect(kept).toMatchObject({ kind: "profiles", marks: 42 });
    expect(rowsOf(hall).filter((row) => "low" in (row as object))).toHaveLength(2);
  });
});

describe("nothing is kept of", () => {
  test.each([
    ["a forged one", tamper(bundle, "marks.csv", (text) => text.replace("women", "nobody")), "reference.row"],
    ["invented athletes", makeBundle({ rows: plain, demo: true }).bytes, "reference.demo"],
    ["a rehearsal", makeBundle({ rows: plain, rehearsal: true }).bytes, "reference.rehearsal"],
    ["something else", new Uint8Array([1, 2, 3]), "reference.notZip"],
    [
      "something too big for a bundle",
      zipOf(new Map([...textsOf(bundle), ["summary.csv", "x".repeat(9 * 1024 * 1024)]])),
      "reference.tooBig",
    ],
    ["something too big", new Uint8Array(33 * 1024 * 1024), "reference.tooBig"],
  ])("%s", async (_what, bytes, why) => {
    const hall = testDesk();
    expect(await refusalOf(bring(hall, bytes))).toMatchObject({ key: why });
    expect(rowsOf(hall)).toEqual([]);
    expect(hall.faults).toEqual([]);
  });

  test("what left from here: one's own athletes are compared already", async () => {
    const hall = testDesk();
    const dayId = await holdDay(hall);
    const organiser = hall.as("organiser");
    const preview = await organiser.bundle.preview({ dayId });
    const previewSha256 = preview?.sha256 ?? "";
    const { bytes } = await organiser.bundle.write({ dayId, previewSha256 });
    const own = new Uint8Array(Buffer.from(bytes, "base64"));
    expect(await refusalOf(bring(hall, own))).toMatchObject({ key: "reference.own" });
    // Somewhere else, that very file is welcome: the writer and the reader are one format.
    const elsewhere = testDesk();
    expect(await add(elsewhere, own, "Wollzig Hall")).toMatchObject({ added: true });
    const [kept] = await elsewhere.as("organiser").reference.list();
    expect(kept?.marks).toBe(preview?.rows.flatMap(({ marks }) => marks).length);
    expect(kept?.marks).toBeGreaterThan(20);
  });

  test("one without an origin, with too long a one, or that is not at hand any more", async () => {
    const hall = testDesk();
    const bundleId = await idOf(hall, bundle.bytes);
    const { reference } = hall.as("organiser");
    for (const origin of ["", "   ", "x".repeat(41)]) {
      expect(await refusalOf(reference.add({ bundleId, origin }))).toMatchObject({ key: "reference.origin" });
    }
    for (let seed = 2; seed < 5; seed += 1) await bring(hall, makeBundle({ rows: plain, seed }).bytes);
    expect(await refusalOf(reference.add({ bundleId, origin: "North" }))).toMatchObject({
      key: "reference.gone",
    });
    expect(rowsOf(hall)).toEqual([]);
  });
});

test("in the demonstration invented athletes are welcome, and never reach the hall's own store", async () => {
  const hall = testDesk();
  await hall.as("organiser").day.openDemo();
  await add(hall, makeBundle({ rows: plain, demo: true }).bytes, "Invented");
  expect(await hall.as("organiser").reference.list()).toHaveLength(1);
  hall.desk.use("own");
  expect(await hall.as("organiser").reference.list()).toEqual([]);
});

test.each(roles.filter((role) => role !== "organiser"))("the %s may do none of it", async (role) => {
  const { reference } = testDesk().as(role);
  const id = "00000000-0000-4000-8000-000000000000";
  for (const call of [
    () => reference.tables(),
    () => reference.addTable({ tableId: id }),
    () => reference.removeTable({ id: 1 }),
    () => reference.forgetPublisher({ id: 1 }),
    () => reference.list(),
    () => reference.bring(file(bundle.bytes)),
    () => reference.add({ bundleId: id, origin: "North" }),
    () => reference.remove({ id: 1 }),
  ]) {
    expect((await refusalOf(call())).key).toMatch(/^door\.(?:forbidden|locked)$/);
  }
});

test("the board's own code asks for no place", () => {
  const board = new URL("../../electron/api/board/", import.meta.url);
  const texts = ["board.ts", "shape.ts", "view.ts"].map((name) => readFileSync(new URL(name, board), "utf8"));
  expect(texts.join("")).not.toMatch(/\/place\/|reference/);
});
