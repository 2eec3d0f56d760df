import {
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { restoreStore } from "../../electron/store/backup-restore.ts";
import { whileFileChanges } from "../../electron/store/guard.ts";
import { checkLog } from "../../electron/store/log-check.ts";
import { openStore } from "../../electron/store/open.ts";
import { StoreRefused } from "../../electron/store/refused.ts";
import { readSeal, readTally } from "../../electron/store/seal.ts";
import { setAside, waitingFile } from "../../electron/store/set-aside.ts";
import type { Store } from "../../electron/store/store.ts";
import { connectionOf } from "./connection.ts";
import { dump, fillHall } from "./hall.ts";

let folder = "";
const open: Store[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-seal-"));
});
afterEach(() => {
  for (const store of open.splice(0)) store.close();
  rmSync(folder, { recursive: true, force: true });
});

const file = () => join(folder, "tapeline.sqlite");
const parts = ["", "-wal", "-seal", "-tally"];

function opened(): Store {
  const store = openStore({ file: file() });
  open.push(store);
  return store;
}

function filled(name = "Ada Rill"): Store {
  const store = opened();
  store.write(["people"], (db) =>
    fillHall(db, [
      {
        ...{ sign: "Ada", name, number: "07", birthYear: 1999, category: "open", guardianConsent: false },
        ...{ board: "bib", share: true, asked: true, league: "Foundry Town", bib: 1 },
        ...{ reps: 20, corrected: true, heat: true, past: true },
      },
    ]),
  );
  return store;
}

/** What a crash leaves at this moment, in a folder of its own. */
function crashed(): string {
  const copy = join(mkdtempSync(join(folder, "crashed-")), "tapeline.sqlite");
  for (const part of parts) copyFileSync(`${file()}${part}`, `${copy}${part}`);
  return copy;
}

function refusalOf(store: string): string | null {
  try {
    openStore({ file: store }).close();
    return null;
  } catch (error) {
    if (error instanceof StoreRefused) return error.reason;
    throw error;
  }
}

/** Changes one letter of a text where it stands in a file; SQLite sees nothing wrong with that. */
function bend(store: string, text: string): void {
  const bytes = readFileSync(store);
  const at = bytes.indexOf(text);
  expect(at).toBeGreaterThan(0);
  bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
  writeFileSync(store, bytes);
}

test("one bit of a name, of a past result's test, or of what was seen is noticed in a closed store", () => {
  filled();
  open.splice(0)[0]?.close();
  for (const text of ["Ada Rill", "2025-10-01", '"reps":20', "Ada was cold"]) {
    const before = readFileSync(file());
    bend(file(), text);
    // Where it changes what a mark comes to, the marks say so before the seal does.
    expect([text, refusalOf(file())]).toEqual([text, expect.stringMatching(/^(?:changed|damaged)$/)]);
    writeFileSync(file(), before);
  }
  expect(refusalOf(file())).toBeNull();
});

test("a store that was killed opens, and one bit of its file or of its log is noticed", () => {
  const store = filled();
  whileFileChanges(connectionOf(store.db), () => {});
  store.write(["day"], (db) => db.exec("UPDATE day SET title = 'Entered after the last seal'"));
  expect(refusalOf(crashed())).toBeNull();
  const bentFile = crashed();
  bend(bentFile, "Ada Rill");
  expect(refusalOf(bentFile)).toBe("changed");
  const bentLog = crashed();
  bend(`${bentLog}-wal`, "Entered after");
  expect(refusalOf(bentLog)).toBe("shortened");
});

test("a log that lost its end, all of it, or that was left behind is noticed", () => {
  const store = filled();
  store.write(["day"], (db) => db.exec("UPDATE day SET title = 'Later'"));
  const whole = crashed();
  const { committed } = checkLog(`${whole}-wal`);
  expect(readTally(whole)).toEqual({ number: readSeal(whole)?.number, bytes: committed });
  for (const length of [committed - 1, 32 + 4120, 32, 0]) {
    const cut = crashed();
    truncateSync(`${cut}-wal`, length);
    expect([length, refusalOf(cut)]).toEqual([length, "shortened"]);
  }
  const left = crashed();
  rmSync(`${left}-wal`);
  expect(refusalOf(left)).toBe("shortened");
});

test("what is refused as changed or shortened opens once a person says so, and is sealed anew", () => {
  filled();
  open.splice(0)[0]?.close();
  bend(file(), "Ada Rill");
  expect(refusalOf(file())).toBe("changed");
  openStore({ file: file(), accepted: true }).close();
  expect(refusalOf(file())).toBeNull();
});

test("a store whose file is gone or empty is not begun anew without a word", () => {
  filled();
  open.splice(0)[0]?.close();
  truncateSync(file(), 0);
  expect(refusalOf(file())).toBe("gone");
  rmSync(file());
  expect(refusalOf(file())).toBe("gone");
  expect(setAside(file(), new Date("2026-11-14T09:00:00Z"))).toBe(
    join(folder, "tapeline.set-aside-2026-11-14T090000-1.sqlite"),
  );
  expect(refusalOf(file())).toBeNull();
});

test("a seal or a tally that can't be read proves nothing, and refuses nothing", () => {
  const store = filled();
  const before = dump(store.db);
  for (const part of ["-seal", "-tally"]) {
    const harmed = crashed();
    const bytes = readFileSync(`${harmed}${part}`);
    bytes.writeUInt8(bytes.readUInt8(3) ^ 1, 3);
    writeFileSync(`${harmed}${part}`, bytes);
    const again = openStore({ file: harmed });
    expect(dump(again.db)).toEqual(before);
    again.close();
  }
});

test("a restore that was cut off is finished, and never meets another store's log", () => {
  const store = filled();
  const killed = crashed();
  whileFileChanges(connectionOf(store.db), () => {});
  const bytes = readFileSync(file());
  const rows = dump(store.db);
  // Everything moved but the log, and the restored file waiting: the worst moment.
  writeFileSync(waitingFile(killed), bytes);
  rmSync(killed);
  const again = openStore({ file: killed });
  expect(dump(again.db)).toEqual(rows);
  again.close();
  const aside = readdirSync(join(killed, "..")).filter((name) => name.includes(".set-aside-"));
  expect(aside.filter((name) => name.endsWith("-wal"))).toHaveLength(1);
});

test("a restore never overwrites what was set aside before", () => {
  filled();
  open.splice(0)[0]?.close();
  const bytes = readFileSync(file());
  const at = new Date("2026-11-14T09:00:00Z");
  const names = [1, 2].map(() => restoreStore({ file: file() }, bytes, at));
  expect(new Set(names).size).toBe(2);
});
