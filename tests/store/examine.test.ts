import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { type CheckStep, checkSteps } from "../../electron/domain/backups/check-time.ts";
import { examineApart, lookAgainApart } from "../../electron/host/store-checks.ts";
import { examine, lookAgain } from "../../electron/store/connection/examine.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { StoreRefused } from "../../electron/store/connection/refused.ts";
import { doubtFile, sealFile, tallyFile } from "../../electron/store/keeping/seal.ts";
import { setAside } from "../../electron/store/keeping/set-aside.ts";
import { makeHall } from "../faults/hall.ts";
import { enter } from "../faults/images.ts";
import { bytesRead } from "./bytes-read.ts";
import { connectionOf } from "./connection.ts";
import { dump } from "./hall.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-examine-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const file = () => join(folder, "tapeline.sqlite");
const trusting = { trustSeal: true, told: () => {} };

/** A hall's store that was closed, after something was done to it by the program's own hand. */
function closed(then = ""): void {
  const store = openStore({ file: file() });
  makeHall(store, 40);
  for (let index = 0; index < 40; index += 1) enter(store, index);
  if (then !== "") store.write([], (db) => db.exec(then));
  store.close();
}

/** Under a seal that holds: a fault of the program, and not of the disk. */
const wrongMark = "UPDATE mark SET value = value + 1, detail = json_set(detail, '$.value', value + 1)";

async function reasonOf(work: () => unknown): Promise<string | null> {
  try {
    await work();
    return null;
  } catch (error) {
    if (error instanceof StoreRefused) return error.reason;
    throw error;
  }
}

test("under a whole seal the file is read once, and its content is left for later", () => {
  closed();
  const { size } = statSync(file());
  let found = examine({ file: file() }, trusting);
  expect(found).toMatchObject({ is: "store", toLookAgain: true });
  const read = bytesRead(file(), () => {
    found = examine({ file: file() }, trusting);
  });
  // Once for the sums, and its first block for the header.
  expect(read).toBeGreaterThanOrEqual(size);
  expect(read).toBeLessThanOrEqual(size + 2 ** 20);
  const store = openStore({ file: file() }, found);
  expect(dump(store.db).get("attempt")?.length).toBe(40);
  store.close();
  expect(examine({ file: file() })).toMatchObject({ toLookAgain: false });
});

test("what no seal proves is looked at as a whole before it is opened, in this order", () => {
  closed();
  for (const part of [sealFile(file()), tallyFile(file())]) rmSync(part);
  const seen: CheckStep[] = [];
  const found = examine({ file: file() }, { trustSeal: true, told: (at) => seen.push(at) });
  expect(found).toMatchObject({ is: "store", sums: null, toLookAgain: false });
  const steps = [...new Set(seen.map(({ step }) => step))];
  expect(steps).toEqual(checkSteps);
  expect(seen.at(-1)).toMatchObject({ step: "marks", total: 40 });
});

test("a wrong mark under a seal that holds is found behind the entries, and no later start opens that store", async () => {
  closed(wrongMark);
  const store = openStore({ file: file() }, examine({ file: file() }, trusting));
  expect(await lookAgainApart({ file: file() })).toMatch(
    /^the mark of athlete \d+ in [a-z-]+ does not follow$/,
  );
  store.close();
  expect(existsSync(doubtFile(file()))).toBe(true);
  expect(await reasonOf(() => examine({ file: file() }, trusting))).toBe("damaged");
  expect(await reasonOf(() => openStore({ file: file() }))).toBe("damaged");
  const aside = setAside(file(), new Date("2026-11-14T09:00:00Z"));
  expect(existsSync(doubtFile(file()))).toBe(false);
  expect(readFileSync(doubtFile(String(aside)), "utf8")).toContain("does not follow");
});

test("looking again changes nothing of a store in use, and holds up no entry and no checkpoint after it", () => {
  closed();
  const store = openStore({ file: file() }, examine({ file: file() }, trusting));
  const rows = dump(store.db);
  const before = readFileSync(file());
  expect(lookAgain({ file: file() })).toBeNull();
  expect(readFileSync(file())).toEqual(before);
  expect(dump(store.db)).toEqual(rows);
  const enters = store.rest();
  // More than a megabyte of log: a checkpoint would be due, and waits.
  store.write([], (db) => db.exec("CREATE TABLE filler AS SELECT randomblob(2000000) AS bytes"));
  expect(statSync(`${file()}-wal`).size).toBeGreaterThan(1_000_000);
  enters();
  enter(store, 40);
  expect(statSync(`${file()}-wal`).size).toBe(0);
  expect(connectionOf(store.db).inTransaction).toBe(false);
  store.close();
});

test("a thread finds the same as this one, and tells the same refusal", async () => {
  closed();
  const here = examine({ file: file() }, trusting);
  expect(await examineApart({ file: file() }, () => {})).toEqual(here);
  const bytes = readFileSync(file());
  writeFileSync(file(), bytes.fill(bytes.readUInt8(bytes.length - 1) ^ 1, bytes.length - 1));
  const told = await examineApart({ file: file() }, () => {}).catch((error: unknown) => error);
  expect(told).toBeInstanceOf(StoreRefused);
  expect(told).toMatchObject({ reason: "changed", doubted: false, sentence: { key: "store.changed" } });
  writeFileSync(file(), "This was never a store. ".repeat(400));
  expect(await reasonOf(() => examineApart({ file: file() }, () => {}))).toBe("foreign");
  rmSync(file());
  expect(await reasonOf(() => examineApart({ file: file() }, () => {}))).toBe("gone");
});
