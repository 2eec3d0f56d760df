import fs, {
  chmodSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { syncBuiltinESMExports } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { restoreStore } from "../../electron/backups/restore.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { StoreRefused } from "../../electron/store/connection/refused.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { bringLogIn } from "../../electron/store/keeping/guard.ts";
import { checkLog } from "../../electron/store/keeping/log-check.ts";
import { besides, readGuards } from "../../electron/store/keeping/seal.ts";
import {
  filesSetAside,
  setAside,
  uncheckedFile,
  waitingFile,
} from "../../electron/store/keeping/set-aside.ts";
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
  bringLogIn(connectionOf(store.db));
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
  const { seal, tally } = readGuards(whole);
  expect([seal, tally]).toMatchObject([
    { number: 1, log: null },
    { number: 1, log: { bytes: committed } },
  ]);
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

test("a seal or a tally that can't be read is refused, opens once a person says so, and is made anew", () => {
  const store = filled();
  const before = dump(store.db);
  for (const [part, harm] of harmed) {
    const copy = crashed();
    harm(`${copy}${part}`);
    expect([part, refusalOf(copy)]).toEqual([part, "changed"]);
    const again = openStore({ file: copy, accepted: true });
    expect(dump(again.db)).toEqual(before);
    again.close();
    expect([part, refusalOf(copy)]).toEqual([part, null]);
  }
});

const bentAt = (at: number) => (file: string) => {
  const bytes = readFileSync(file);
  writeFileSync(file, bytes.fill(bytes.readUInt8(at) ^ 1, at, at + 1));
};
const harmed: readonly [string, (file: string) => void][] = [
  ["-seal", bentAt(3)],
  // The tally's second place.
  ["-seal", bentAt(515)],
  ["-tally", bentAt(3)],
  ...["-seal", "-tally"].flatMap((part): [string, (file: string) => void][] => [
    [part, (file) => truncateSync(file, 0)],
    [part, (file) => writeFileSync(file, Buffer.alloc(256))],
    [part, (file) => rmSync(file)],
  ]),
];

test.each([["-seal"], ["-tally"], ["-wal"]])(
  "no file, or an empty one, with its %s beside it is no new hall, and nothing is emptied",
  (kept) => {
    filled();
    const whole = crashed();
    const bytes = readFileSync(`${whole}${kept}`);
    expect(bytes.length).toBeGreaterThan(0);
    for (const part of parts.filter((each) => each !== kept)) rmSync(`${whole}${part}`);
    for (const make of [() => {}, () => writeFileSync(whole, "")]) {
      make();
      expect(refusalOf(whole)).toBe("gone");
      expect(readFileSync(`${whole}${kept}`)).toEqual(bytes);
    }
    // Nor where a person has accepted it: what is there has to be set aside first.
    expect(() => openStore({ file: whole, accepted: true })).toThrow(StoreRefused);
  },
);

test("no file with backups of it beside it is no new hall, until a person wants an empty one", () => {
  const backups = join(folder, "backups");
  mkdirSync(backups);
  expect(refusalOf(file())).toBeNull();
  for (const part of ["", ...besides]) rmSync(`${file()}${part}`, { force: true });
  writeFileSync(join(backups, "tapeline-3f09ab12-000042-2026-11-14-0905.backup"), "");
  const location = { file: file(), backups };
  expect(() => openStore(location)).toThrow("gone");
  expect(readdirSync(folder)).toEqual(["backups"]);
  openStore({ ...location, accepted: true }).close();
  openStore(location).close();
});

test("a log of another time beside a store is noticed, and the one that was just taken in does no harm", () => {
  const store = filled();
  const taken = crashed();
  bringLogIn(connectionOf(store.db));
  const harmless = crashed();
  copyFileSync(`${taken}-wal`, `${harmless}-wal`);
  const again = openStore({ file: harmless });
  expect(dump(again.db)).toEqual(dump(store.db));
  again.close();
  open.splice(0)[0]?.close();
  openStore({ file: file() }).close();
  copyFileSync(`${taken}-wal`, `${file()}-wal`);
  expect(refusalOf(file())).toBe("changed");
});

test("what is refused is read out of memory: not one file is made beside it", () => {
  filled();
  const copy = crashed();
  rmSync(`${copy}-wal`);
  expect(refusalOf(copy)).toBe("shortened");
  expect(readdirSync(join(copy, "..")).sort()).toEqual([
    "tapeline.sqlite",
    "tapeline.sqlite-seal",
    "tapeline.sqlite-tally",
  ]);
});

test("damage that happens while the store is open is never sealed over", () => {
  const store = filled();
  bringLogIn(connectionOf(store.db));
  bend(file(), "Ada Rill");
  store.write(["day"], (db) => db.exec("UPDATE day SET title = 'Later'"));
  expect(() => bringLogIn(connectionOf(store.db))).toThrow("not as it was sealed");
  open.splice(0)[0]?.close();
  expect(refusalOf(file())).toBe("changed");
});

test("an opening takes away what a killed restore left unchecked, and erasure would", () => {
  const unchecked = uncheckedFile(file());
  for (const part of ["", "-wal"]) writeFileSync(`${unchecked}${part}`, "Ada Rill");
  expect(filesSetAside(folder).sort()).toEqual([unchecked, `${unchecked}-wal`]);
  opened();
  expect(filesSetAside(folder)).toEqual([]);
});

// SQLite before 3.51 deletes the log of a file that it closes and finds unlocked, and what is entered then is lost.
test.skipIf(process.platform !== "linux")("an open store keeps SQLite's lock of its file all along", () => {
  const store = filled();
  const lock = new RegExp(`POSIX .* READ ${process.pid} .*:${statSync(file()).ino} 1073741826 `);
  expect(readFileSync("/proc/locks", "utf8")).toMatch(lock);
  bringLogIn(connectionOf(store.db));
  store.write(["day"], (db) => db.exec("UPDATE day SET title = 'Later'"));
  expect(readFileSync("/proc/locks", "utf8")).toMatch(lock);
});

/** The files that the disk is waited for while something is done. */
function synced(work: () => void): string[] {
  const [real, seen] = [fs.fsyncSync, new Set<number>()];
  fs.fsyncSync = (opened) => {
    seen.add(fs.fstatSync(opened).ino);
    real(opened);
  };
  syncBuiltinESMExports();
  try {
    work();
  } finally {
    fs.fsyncSync = real;
    syncBuiltinESMExports();
  }
  return parts.filter((part) => seen.has(statSync(`${file()}${part}`).ino));
}

test("the tally waits for the disk at the first commit after a seal, and not at one that changes nothing", () => {
  const store = filled();
  expect(synced(() => bringLogIn(connectionOf(store.db)))).toEqual(["-wal", "-seal", "-tally"]);
  // As a retry does, which finds that all of it is there already.
  expect(synced(() => store.write(["day"], () => {}))).toEqual([]);
  const commit = () => store.write(["day"], (db) => db.exec("UPDATE day SET title = title || '.'"));
  expect(synced(commit)).toEqual(["-tally"]);
  expect(synced(commit)).toEqual([]);
});

test("asking SQLite how far the log reaches brings nothing of it in", () => {
  const store = filled();
  const { committed } = checkLog(`${file()}-wal`);
  const before = readFileSync(file());
  // 32 bytes of header, and a header of 24 before each page (sqlite.org/walformat.html).
  const frames = (committed - 32) / (24 + 4096);
  expect(connectionOf(store.db).pragma("wal_checkpoint(NOOP)")).toMatchObject([
    { log: frames, checkpointed: 0 },
  ]);
  expect(readFileSync(file())).toEqual(before);
});

test("a reader from outside holds up neither an entry, nor a checkpoint, nor a close for long", () => {
  const store = filled();
  const reader = new SqliteDatabase(file(), { readonly: true });
  reader.exec("BEGIN");
  reader.prepare("SELECT count(*) FROM day").get();
  store.write(["day"], (db) => db.exec("UPDATE day SET title = 'Later'"));
  const before = performance.now();
  expect(() => bringLogIn(connectionOf(store.db))).toThrow("being read");
  store.write(["day"], (db) => db.exec("UPDATE day SET title = 'Latest'"));
  const killed = crashed();
  const rows = dump(store.db);
  open.splice(0)[0]?.close();
  expect(performance.now() - before).toBeLessThan(1500);
  reader.close();
  for (const each of [killed, file()]) {
    const again = openStore({ file: each });
    expect(dump(again.db)).toEqual(rows);
    again.close();
  }
});

test.skipIf(process.platform === "win32")(
  "only this computer's user can read a store and what is beside it",
  () => {
    const modes = () =>
      [...parts, "-shm"].map((part) => [part, (statSync(`${file()}${part}`).mode & 0o777).toString(8)]);
    const expected = [...parts, "-shm"].map((part) => [part, "600"]);
    const store = filled();
    expect(modes()).toEqual(expected);
    // As an earlier version left them.
    store.close();
    open.splice(0);
    for (const part of ["", "-seal", "-tally"]) chmodSync(`${file()}${part}`, 0o644);
    opened();
    expect(modes()).toEqual(expected);
  },
);

test("a restore that was cut off is finished, and never meets another store's log", () => {
  const store = filled();
  const killed = crashed();
  bringLogIn(connectionOf(store.db));
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
