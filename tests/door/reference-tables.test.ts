import { afterAll, describe, expect, test } from "vitest";
import { readBundle } from "../../electron/api/reference/read.ts";
import { publicKeyOf, shortKey, signatureFile } from "../../electron/api/reference/signature.ts";
import { createCalculator } from "../../electron/host/calculator.ts";
import { connectionOf } from "../store/connection.ts";
import { makeBundle, plain } from "../unit/reference/making.ts";
import { group, invented, plainTable, repacked, tableOf } from "../unit/reference/making-table.ts";
import { refusalOf, type TestDesk, testClock, testDesk } from "./desk.ts";

const [key, otherKey] = [invented(), invented()];
const zip = tableOf({}, key);
const newer = tableOf({ made: "2026-11-10" }, key);
const bytesOf = (text: string) => new Uint8Array(Buffer.from(text));
const textOf = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);

const calculator = createCalculator();
afterAll(() => calculator.close());
/** Desks that read in the door's own thread, and in another as the program does. */
const desks: [string, () => TestDesk][] = [
  ["in the door's own thread", () => testDesk()],
  ["in a thread apart", () => testDesk(":memory:", testClock(), { calculator })],
];

function bring(hall: TestDesk, bytes: Uint8Array) {
  // The door makes a stream of the file that a client sends; its type is the client's.
  const file = new Blob([new Uint8Array(bytes)]).stream() as unknown as Blob;
  return hall.as("organiser").reference.bring(file);
}

async function idOf(hall: TestDesk, bytes: Uint8Array): Promise<string> {
  const brought = await bring(hall, bytes);
  return "tableId" in brought ? brought.tableId : "";
}

async function add(hall: TestDesk, bytes: Uint8Array) {
  const tableId = await idOf(hall, bytes);
  return hall.as("organiser").reference.addTable({ tableId });
}

/** All that the store holds of tables from elsewhere. */
function rowsOf({ desk }: TestDesk): unknown[] {
  const names = ["publisher", "reference_table", "reference_rules", "reference_in_table"];
  return names.flatMap((name) =>
    connectionOf(desk.store.db).prepare<[], unknown>(`SELECT * FROM ${name}`).all(),
  );
}

const told = {
  ...{ marks: 400, halls: 12, quarters: ["2026-Q1", "2026-Q3"], bundles: 2 },
  tests: [{ test: "push-up", variant: "full", marks: 400, halls: 12, groups: 1, sameRules: true }],
};

describe.each(desks)("a table read %s", (_where, hallOf) => {
  test("is looked at without being kept, then added, then listed with its publisher", async () => {
    const hall = hallOf();
    const brought = await bring(hall, zip);
    const who = { publisher: plainTable.publisher, key: shortKey(publicKeyOf(key)) };
    const dates = { made: "2026-11-01", validUntil: "2028-11-01" };
    const fresh = { knownSince: null, formerly: null, known: false, replaces: null };
    expect(brought).toEqual({
      ...{ kind: "table", tableId: expect.any(String) },
      ...{ ...who, ...dates, ...fresh, ...told },
    });
    expect(rowsOf(hall)).toEqual([]);
    const { reference } = hall.as("organiser");
    expect(await add(hall, zip)).toEqual({ added: true, publisher: plainTable.publisher });
    const at = "2026-11-14T09:00:00.000Z";
    expect(await reference.tables()).toEqual({
      tables: [{ id: 1, ...who, ...dates, addedAt: at, expired: false, ...told }],
      publishers: [{ id: 1, ...who, since: at, hasTable: true }],
    });
    expect(await reference.list()).toEqual([]);
    expect(hall.faults).toEqual([]);
  });

  test("brought or added twice, or packed anew, is kept once", async () => {
    const hall = hallOf();
    const tableId = await idOf(hall, zip);
    const { reference } = hall.as("organiser");
    expect(await reference.addTable({ tableId })).toMatchObject({ added: true });
    const before = rowsOf(hall);
    expect(await reference.addTable({ tableId })).toMatchObject({ added: false });
    expect(
      await bring(
        hall,
        repacked(zip, () => undefined),
      ),
    ).toMatchObject({ known: true });
    expect(
      await add(
        hall,
        repacked(zip, () => undefined),
      ),
    ).toMatchObject({ added: false });
    expect(rowsOf(hall)).toEqual(before);
  });

  test("that is newer, by a key that is known, replaces the older one, which doesn't come back", async () => {
    const hall = hallOf();
    await add(hall, zip);
    const late = await idOf(hall, zip);
    expect(await bring(hall, newer)).toMatchObject({
      ...{ knownSince: "2026-11-14T09:00:00.000Z", replaces: "2026-11-01", known: false },
    });
    await add(hall, newer);
    const { reference } = hall.as("organiser");
    expect((await reference.tables()).tables.map(({ made }) => made)).toEqual(["2026-11-10"]);
    const older = { key: "referenceTable.older", values: { date: "2026-11-10" } };
    expect(await refusalOf(bring(hall, zip))).toMatchObject(older);
    // Also one that was looked at before the newer one came.
    expect(await refusalOf(reference.addTable({ tableId: late }))).toMatchObject(older);
    expect((await reference.tables()).tables).toHaveLength(1);
  });

  test("of another key under a known name is refused until that key is forgotten, whatever was removed", async () => {
    const hall = hallOf();
    const stranger = tableOf({ made: "2026-11-10", publisher: "the HARBOUR table" }, otherKey);
    const early = await idOf(hall, stranger);
    await add(hall, zip);
    const { reference } = hall.as("organiser");
    const [wrong, known] = [otherKey, key].map((each) =>
      shortKey(publicKeyOf(each)).replaceAll(" ", "\u00a0"),
    );
    const values = { publisher: plainTable.publisher, key: wrong, known };
    const refusal = { key: "referenceTable.otherKey", values };
    const before = rowsOf(hall);
    expect(await refusalOf(bring(hall, stranger))).toEqual(refusal);
    expect(await refusalOf(reference.addTable({ tableId: early }))).toEqual(refusal);
    expect(rowsOf(hall)).toEqual(before);
    expect(await reference.removeTable({ id: 1 })).toEqual({ removed: true });
    expect(await reference.removeTable({ id: 1 })).toEqual({ removed: false });
    expect(await refusalOf(bring(hall, stranger))).toEqual(refusal);
    expect(await reference.tables()).toMatchObject({ tables: [], publishers: [{ hasTable: false }] });
    expect(await reference.forgetPublisher({ id: 1 })).toEqual({ forgotten: true });
    expect(await reference.forgetPublisher({ id: 1 })).toEqual({ forgotten: false });
    expect(await add(hall, stranger)).toMatchObject({ added: true });
  });

  test("by a known key under another name is theirs, and it is said which name it had", async () => {
    const hall = hallOf();
    await add(hall, zip);
    const renamed = tableOf({ publisher: "The port's table" }, key);
    expect(await bring(hall, renamed)).toMatchObject({
      formerly: plainTable.publisher,
      replaces: "2026-11-01",
    });
    await add(hall, renamed);
    expect(await hall.as("organiser").reference.tables()).toMatchObject({
      ...{ tables: [{ publisher: "The port's table" }], publishers: [{ publisher: "The port's table" }] },
    });
  });

  test.each([
    ["an unsigned one", repacked(zip, (files) => delete files["signature.json"]), "referenceTable.unsigned"],
    [
      "a changed one",
      repacked(zip, (files) => {
        files["groups.csv"] = bytesOf(textOf(files["groups.csv"]).replace(",400,", ",401,"));
      }),
      "reference.changed",
    ],
    [
      "one signed by somebody else",
      repacked(zip, (files) => {
        files["signature.json"] = bytesOf(
          signatureFile(files["datapackage.json"] ?? new Uint8Array(), otherKey),
        );
      }),
      "referenceTable.signature",
    ],
    ["one that has expired", tableOf({ validUntil: "2026-11-13" }), "referenceTable.expired"],
    [
      "one of a later version",
      repacked(zip, (files) => {
        const text = textOf(files["datapackage.json"]).replace('"tableVersion": 1', '"tableVersion": 2');
        files["datapackage.json"] = bytesOf(text);
      }),
      "referenceTable.version",
    ],
    [
      "one with a bundle's file in it",
      repacked(zip, (files) => {
        files["marks.csv"] = bytesOf("x");
      }),
      "reference.stray",
    ],
    ["one of two halls", tableOf({ groups: [{ ...group, halls: 2 }] }), "reference.row"],
  ])("is not kept when it is %s", async (_what, bytes, why) => {
    const hall = hallOf();
    expect(await refusalOf(bring(hall, bytes))).toMatchObject({ key: why });
    expect(rowsOf(hall)).toEqual([]);
    expect(hall.faults).toEqual([]);
  });

  test("and a bundle that is in it: the bundle is listed with whose table it is in", async () => {
    const hall = hallOf();
    const { bytes } = makeBundle({ rows: plain });
    const { reference } = hall.as("organiser");
    const brought = await bring(hall, bytes);
    await reference.add({ bundleId: "bundleId" in brought ? brought.bundleId : "", origin: "North" });
    expect(await reference.list()).toMatchObject([{ origin: "North", inTableOf: null }]);
    const bundles = [readBundle(bytes).contentSha256];
    await add(hall, tableOf({ bundles }, key));
    expect(await reference.list()).toMatchObject([{ origin: "North", inTableOf: plainTable.publisher }]);
  });
});

test("its last day is still one of use; on the next it is refused, and one that is held is said to have expired", async () => {
  const clock = testClock();
  const hall = testDesk(":memory:", clock);
  clock.at = new Date("2028-11-01T09:00:00Z");
  await add(hall, zip);
  expect(await hall.as("organiser").reference.tables()).toMatchObject({ tables: [{ expired: false }] });
  clock.at = new Date("2028-11-02T09:00:00Z");
  expect(await hall.as("organiser").reference.tables()).toMatchObject({ tables: [{ expired: true }] });
  expect(await refusalOf(bring(hall, zip))).toMatchObject({ key: "referenceTable.expired" });
});

test("a file brought while another is read takes its place, and the other is to be chosen again", async () => {
  const hall = testDesk(":memory:", testClock(), { calculator });
  const first = refusalOf(bring(hall, zip));
  const second = bring(hall, newer);
  expect(await first).toMatchObject({ key: "reference.gone" });
  expect(await second).toMatchObject({ made: "2026-11-10" });
});

test("in the demonstration a table and its publisher are the demonstration's alone", async () => {
  const hall = testDesk();
  await hall.as("organiser").day.openDemo();
  await add(hall, zip);
  expect((await hall.as("organiser").reference.tables()).publishers).toHaveLength(1);
  hall.desk.use("own");
  expect(await hall.as("organiser").reference.tables()).toEqual({ tables: [], publishers: [] });
});
