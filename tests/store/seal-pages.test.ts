import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openStore } from "../../electron/store/connection/open.ts";
import { StoreRefused } from "../../electron/store/connection/refused.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { bringLogIn } from "../../electron/store/keeping/guard.ts";
import { checkLog } from "../../electron/store/keeping/log-check.ts";
import { pagesInTurn } from "../../electron/store/keeping/page-sums.ts";
import { closeGuardFiles, makeGuardFiles, readGuards } from "../../electron/store/keeping/seal.ts";
import { bytesRead } from "./bytes-read.ts";
import { connectionOf } from "./connection.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-pages-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const file = () => join(folder, "tapeline.sqlite");
const pageBytes = 4096;
/** Three times what a checkpoint looks at in its turn. */
const pagesOfFiller = 3 * pagesInTurn;

/** A store with so many pages that nothing of the program changes. */
function filled(pages: number): Store {
  const store = openStore({ file: file() });
  store.write([], (db) => {
    db.exec("CREATE TABLE filler (id INTEGER PRIMARY KEY, bytes BLOB)");
    db.exec(`WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ${pages})
      INSERT INTO filler SELECT i, CAST('filler ' || i AS BLOB) || randomblob(3900) FROM n`);
  });
  bringLogIn(connectionOf(store.db));
  return store;
}

function change(store: Store): void {
  store.write([], (db) => db.exec("UPDATE filler SET bytes = 'another' WHERE id = 1"));
}

function refusalOf(): string | null {
  try {
    openStore({ file: file() }).close();
    return null;
  } catch (error) {
    if (error instanceof StoreRefused) return error.reason;
    throw error;
  }
}

/** The seal's sum counted plainly, by another way than the program's: the file as it lies there. */
function counted() {
  const bytes = readFileSync(file());
  const sums = Array.from({ length: bytes.length / pageBytes }, (_, page) =>
    createHash("sha256")
      .update(bytes.subarray(page * pageBytes, (page + 1) * pageBytes))
      .digest("hex"),
  );
  const pages = createHash("sha256").update(sums.join(""), "hex").digest("hex");
  return { bytes: bytes.length, pageBytes, pages };
}

test("a checkpoint reads the pages that it replaces and a few in turn, and not the whole file", () => {
  const store = filled(pagesOfFiller);
  change(store);
  const log = checkLog(`${file()}-wal`);
  const frames = (log.committed - 32) / (24 + pageBytes);
  const read = bytesRead(file(), () => bringLogIn(connectionOf(store.db)));
  expect(read).toBeGreaterThanOrEqual(pagesInTurn * pageBytes);
  expect(read).toBeLessThanOrEqual((pagesInTurn + frames) * pageBytes);
  store.close();
  expect(refusalOf()).toBeNull();
});

test("the seal is the sum of the file's pages, whatever came and went between two of them", () => {
  const store = filled(400);
  const steps = [
    () => change(store),
    () => store.write([], (db) => db.exec("DELETE FROM filler WHERE id > 90")),
    () => store.wipe(),
    () => store.write([], (db) => db.exec("INSERT INTO filler (bytes) SELECT randomblob(9000) FROM filler")),
  ];
  for (const step of steps) {
    step();
    bringLogIn(connectionOf(store.db));
    const { seal } = readGuards(file());
    expect(seal).toMatchObject({ file: counted() });
  }
  store.close();
  expect(refusalOf()).toBeNull();
});

test("damage of a page that no checkpoint looked at keeps its sum: the next start refuses it", () => {
  const store = filled(pagesOfFiller);
  const bytes = readFileSync(file());
  // Neither replaced by the next checkpoints, nor in their turn: they have looked as far as the end of the file.
  const at = bytes.indexOf("filler 400");
  expect(at).toBeGreaterThan(pagesInTurn * pageBytes);
  bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
  writeFileSync(file(), bytes);
  change(store);
  bringLogIn(connectionOf(store.db));
  store.close();
  expect(refusalOf()).toBe("changed");
});

test("its turn comes: a few checkpoints later that damage stops them", () => {
  const store = filled(pagesOfFiller);
  const bytes = readFileSync(file());
  const at = bytes.indexOf("filler 400");
  bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
  writeFileSync(file(), bytes);
  const checkpoints = () => {
    for (let turn = 0; turn < 4; turn += 1) {
      change(store);
      bringLogIn(connectionOf(store.db));
    }
  };
  expect(checkpoints).toThrow("not as it was sealed");
  store.close();
});

test("a seal of before, by the hash of the whole file, still holds, and the next one is by pages", () => {
  filled(10).close();
  const bytes = readFileSync(file());
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  const old = { number: 1, file: { bytes: bytes.length, sha256 }, log: null };
  const sealAnew = () => closeGuardFiles(makeGuardFiles(file(), old));
  sealAnew();
  writeFileSync(file(), Buffer.from(bytes).fill(bytes.readUInt8(bytes.length - 1) ^ 1, bytes.length - 1));
  expect(refusalOf()).toBe("changed");
  writeFileSync(file(), bytes);
  sealAnew();
  expect(refusalOf()).toBeNull();
  expect(readGuards(file()).seal).toMatchObject({ file: counted() });
});
