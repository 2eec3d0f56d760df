import { randomUUID } from "node:crypto";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { inflateRawSync } from "node:zlib";
import { expect, test } from "vitest";
import { copyStore } from "../../electron/backups/copy.ts";
import { packBackup, unpackBackup } from "../../electron/backups/file.ts";
import { workHere } from "../../electron/backups/work.ts";
import { keyOf } from "../../electron/network/identity.ts";
import { findWrongMark } from "../../electron/store/connection/checks.ts";
import { inFolderAside } from "../../electron/store/connection/private.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { eraseAthlete } from "../../electron/store/erasure/erase.ts";
import { athleteById } from "../../electron/store/tables/athletes.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { connectionOf } from "../store/connection.ts";
import { dump } from "../store/hall.ts";
import { backedUpDesk, fill, temporaryFolder } from "./backups-desk.ts";
import { refusalOf } from "./desk.ts";

function backupsAt(folder: string): string[] {
  return readdirSync(folder).filter((name) => name.endsWith(".backup"));
}

/** One more row, so that there is something to back up. */
function addSomething(store: Store, value: number): void {
  const more = { athleteId: 1, fingerprint: "core cycle=240", test: "core", variant: "", value } as const;
  const date = `2024-01-${String(value).padStart(2, "0")}`;
  store.write(["people"], (db) => addPastMark(db, { ...more, date }));
}

const lockedWith = "forty wet wheels on maple";

test("going back to a backup brings every row of every table back, and sets aside what was there", async () => {
  const { folder, desk, backups } = backedUpDesk();
  fill(desk);
  const before = dump(desk.store.db);
  expect([...before.values()].filter((rows) => rows.length > 0).length).toBeGreaterThan(12);
  await backups.now();
  const [newest] = (await backups.list()).backups;
  addSomething(desk.store, 11);
  expect(dump(desk.store.db)).not.toEqual(before);

  const { setAside } = await backups.restore({ place: "own", name: newest?.name ?? "", passphrase: null });
  expect(dump(desk.store.db)).toEqual(before);
  expect(connectionOf(desk.store.db).pragma("integrity_check", { simple: true })).toBe("ok");
  expect(findWrongMark(desk.store.db, 1e9)).toBeNull();
  expect(readdirSync(folder)).toContain(setAside?.split("/").at(-1));
  // What was there was backed up first, so that going back can be gone back on.
  const again = (await backups.list()).backups[0];
  await backups.restore({ place: "own", name: again?.name ?? "", passphrase: null });
  expect(dump(desk.store.db).get("past_mark")).toHaveLength((before.get("past_mark")?.length ?? 0) + 1);
});

test("a backup is made while things are entered, and holds what was there", async () => {
  const { desk, backups } = backedUpDesk();
  fill(desk);
  const making = backups.now();
  for (let value = 1; value <= 20; value += 1) {
    addSomething(desk.store, value);
    await new Promise((resolve) => setImmediate(resolve));
  }
  await making;
  expect((await backups.state()).places[0]).toMatchObject({ kind: "own", there: true, trouble: null });
  const [newest] = (await backups.list()).backups;
  await backups.restore({ place: "own", name: newest?.name ?? "", passphrase: null });
  expect(findWrongMark(desk.store.db, 1e9)).toBeNull();
});

test("what is due: after five minutes when something changed, and not otherwise", async () => {
  const { desk, keeper, clock, folder } = backedUpDesk();
  const count = () => backupsAt(join(folder, "backups")).length;
  fill(desk);
  await keeper.runWhenDue();
  expect(count()).toBe(1);
  addSomething(desk.store, 1);
  clock.pass(4);
  await keeper.runWhenDue();
  expect(count()).toBe(1);
  clock.pass(1);
  await keeper.runWhenDue();
  expect(count()).toBe(2);
  clock.pass(20);
  await keeper.runWhenDue();
  expect(count()).toBe(2);
});

test("a desk that opens on what is backed up already adds no backup", async () => {
  const first = backedUpDesk();
  fill(first.desk);
  await first.keeper.run();
  first.desk.close();
  const { keeper, folder } = backedUpDesk(first.folder);
  await keeper.runWhenDue();
  await keeper.runWhatLacks();
  expect(backupsAt(join(folder, "backups"))).toHaveLength(1);
});

test("a stick that is plugged in and out gets its backup each time it is there", async () => {
  const { desk, backups, keeper, clock } = backedUpDesk();
  const port = temporaryFolder();
  const [stick, drawer] = [join(port, "stick"), join(port, "drawer")];
  mkdirSync(stick);
  fill(desk);
  await keeper.chooseSecond(stick);
  await keeper.runWhenDue();
  const second = join(stick, "Tapeline backups");
  expect(backupsAt(second)).toHaveLength(1);

  renameSync(stick, drawer);
  mkdirSync(stick);
  addSomething(desk.store, 1);
  clock.pass(6);
  await keeper.runWhenDue();
  // The empty folder in which a stick was mounted is not the stick.
  expect(readdirSync(stick)).toEqual([]);
  expect((await backups.state()).places).toMatchObject([
    { kind: "own", there: true, trouble: null },
    { kind: "second", there: false, trouble: null },
  ]);

  rmSync(stick, { recursive: true });
  renameSync(drawer, stick);
  await keeper.runWhenDue();
  expect(backupsAt(second)).toHaveLength(2);
});

test("second backups can be locked; without the passphrase nothing of them is read", async () => {
  const { desk, backups, keeper } = backedUpDesk();
  const stick = temporaryFolder();
  fill(desk, ["Zzyzx Quillfeather"]);
  await keeper.chooseSecond(stick);
  await backups.setPassphrase({ passphrase: lockedWith });
  await backups.now();
  const second = join(stick, "Tapeline backups");
  const [name = ""] = backupsAt(second);
  const bytes = readFileSync(join(second, name));
  expect(bytes.includes("Quillfeather")).toBe(false);
  expect(bytes.includes("SQLite format 3")).toBe(false);

  // Another computer, which knows no key.
  const other = backedUpDesk();
  await other.keeper.chooseSecond(stick);
  const [found] = (await other.backups.list()).backups;
  expect(found).toMatchObject({ place: "second", locked: true, own: false, holding: { athletes: 1 } });
  const restore = (passphrase: string | null) => other.backups.restore({ place: "second", name, passphrase });
  expect((await refusalOf(restore(null))).key).toBe("backups.locked");
  expect((await refusalOf(restore("something else"))).key).toBe("backups.wrongPassphrase");
  await restore(lockedWith);
  expect(dump(other.desk.store.db)).toEqual(dump(desk.store.db));
});

test("a locked backup makes another laptop the table that devices know; one that anybody can open has no key", async () => {
  const { folder, desk, backups, keeper, network } = backedUpDesk();
  const stick = temporaryFolder();
  fill(desk);
  keyOf(network.key);
  const key = network.key.read() ?? "";
  expect(key).toContain("PRIVATE KEY");
  await keeper.chooseSecond(stick);
  await backups.setPassphrase({ passphrase: lockedWith });
  await backups.now();
  const second = join(stick, "Tapeline backups");
  const [name = ""] = backupsAt(second);
  const [line = ""] = key.split("\n").slice(1);
  for (const file of [join(second, name), join(folder, "backups", name)]) {
    expect(readFileSync(file).includes(line)).toBe(false);
  }
  expect(await unpackBackup(join(folder, "backups", name), null)).toMatchObject({ networkKey: null });

  const other = backedUpDesk();
  keyOf(other.network.key);
  const own = other.network.key.read();
  await other.keeper.chooseSecond(stick);
  const restore = (passphrase: string) => other.backups.restore({ place: "second", name, passphrase });
  expect((await refusalOf(restore("something else"))).key).toBe("backups.wrongPassphrase");
  expect(other.network.key.read()).toBe(own);
  await restore(lockedWith);
  expect(other.network.key.read()).toBe(key);
});

test("a damaged backup is refused, and the store is as it was", async () => {
  const { folder, desk, backups } = backedUpDesk();
  fill(desk);
  await backups.now();
  const [name = ""] = backupsAt(join(folder, "backups"));
  const file = join(folder, "backups", name);
  const bytes = readFileSync(file);
  bytes.writeUInt8(bytes.readUInt8(bytes.length - 100) ^ 4, bytes.length - 100);
  writeFileSync(file, bytes);
  const before = dump(desk.store.db);
  expect((await refusalOf(backups.restore({ place: "own", name, passphrase: null }))).key).toBe(
    "backups.unreadable",
  );
  expect(dump(desk.store.db)).toEqual(before);
  expect(readdirSync(folder).filter((each) => each.includes("set-aside"))).toEqual([]);
});

test("a backup that promises far more than it can hold is refused before it is unpacked", async () => {
  const file = join(temporaryFolder(), "promising.backup");
  const facts = { number: 1, source: "3f09ab12", at: "2026-11-14T09:00:00.000Z", holding: nothing };
  // Every byte and every sum of it is right: 100 MB of nothing, in 100 KB.
  const from = { store: Buffer.alloc(100 * 1024 * 1024) };
  // It is not read back as whole either.
  await expect(packBackup(file, { from, networkKey: null, facts, lock: null })).rejects.toThrow("unreadable");
  const taken = () => unpackBackup(file, null).then(() => "taken");
  await expect(taken()).rejects.toThrow("unreadable");
  // As long as no store is; nothing of it is read for that.
  truncateSync(file, 3 * 2 ** 30);
  await expect(taken()).rejects.toThrow("unreadable");
});

const nothing = { days: 0, athletes: 0, attempts: 0, newestAttempt: null };

test("a name is looked for among the backups and never pieced into a path", async () => {
  const { desk, backups } = backedUpDesk();
  fill(desk);
  const restore = backups.restore({ place: "own", name: "../tapeline.sqlite", passphrase: null });
  expect((await refusalOf(restore)).key).toBe("backups.gone");
});

test("a place that can't be written says so, and entering goes on", async () => {
  const { folder, desk, backups } = backedUpDesk();
  fill(desk);
  // A file where the folder should be: what no rights of a test's own user can get around.
  writeFileSync(join(folder, "backups"), "");
  await backups.now();
  const [own] = (await backups.state()).places;
  expect(own?.trouble?.key).toMatch(/^backups\.(?:failed|readOnly)$/);
  addSomething(desk.store, 1);
  chmodSync(join(folder, "backups"), 0o600);
  rmSync(join(folder, "backups"));
  await backups.now();
  expect((await backups.state()).places[0]).toMatchObject({ trouble: null });
});

test.skipIf(process.platform === "win32")(
  "nobody but this computer's user can read a backup or its copy",
  async () => {
    const { folder, file, desk, keeper } = backedUpDesk();
    fill(desk);
    await keeper.run();
    const modeOf = (path: string) => (statSync(path).mode & 0o777).toString(8);
    const own = join(folder, "backups");
    expect([own, ...backupsAt(own).map((name) => join(own, name))].map(modeOf)).toEqual(["700", "600"]);
    // Where there can be no copy beside the store, it is made in the system's folder for a moment.
    let lent = "";
    const copying = inFolderAside(file, async (aside) => {
      lent = aside;
      const told = () => {
        for (const name of readdirSync(aside)) expect(modeOf(join(aside, name))).toBe("600");
      };
      expect(modeOf(aside)).toBe("700");
      const copying = { folder: aside, library: {}, check: workHere.check, told };
      await copyStore(desk.store.db, copying, async () => told());
    });
    await copying;
    expect(existsSync(lent)).toBe(false);
  },
);

test("what a crash left of a copy in the system's folder is gone after the next start", async () => {
  const { folder, file, keeper } = backedUpDesk();
  const left = await inFolderAside(file, async (aside) => aside);
  const own = join(folder, "backups", ".copy-01234567-89ab-cdef-0123-456789abcdef");
  for (const each of [left, join(folder, "backups")]) mkdirSync(each);
  for (const each of [join(left, ".copy-1"), own]) writeFileSync(each, "Ada Rill");
  await keeper.look();
  expect([left, own].filter(existsSync)).toEqual([]);
});

test("backups of before are made again without somebody erased, but for a stick's that is away: those go", async () => {
  const { desk, backups, people, keeper, folder, clock } = backedUpDesk();
  const port = temporaryFolder();
  const [stick, drawer] = [join(port, "stick"), join(port, "drawer")];
  mkdirSync(stick);
  fill(desk, ["Zzyzx Quillfeather", "Bo Crank"]);
  await keeper.chooseSecond(stick);
  await keeper.run();
  clock.pass(24 * 60);
  addSomething(desk.store, 1);
  await keeper.run();
  const made = (await backups.list()).backups.map(({ at }) => at);
  renameSync(stick, drawer);
  const before = await people.beforeErasing({ athleteId: 1 });
  expect(before.backups).toEqual({ anew: 2, gone: 0, setAside: 0, away: true });
  await people.erase({ erasureId: randomUUID(), athleteId: 1, typed: "Zzyzx Quillfeather", by: "QA" });
  expect(backupsAt(join(folder, "backups"))).toEqual(
    ["-000003-", "-000004-", "-000005-"].map((number) => expect.stringContaining(number)),
  );
  // Their day and hour stay, and each can be gone back to.
  const after = (await backups.list()).backups;
  expect(after.map(({ at, anew }) => [at, anew]).slice(1)).toEqual(made.map((at) => [at, true]));
  expect(after.map(({ holding }) => holding.athletes)).toEqual([1, 1, 1]);
  for (const bytes of everyByteIn(folder)) expect(bytes.includes("Quillfeather")).toBe(false);
  expect((await backups.state()).toForget).toBe(true);
  renameSync(drawer, stick);
  // Until its next backup it still holds what must be forgotten; nobody goes back to that.
  const [old = ""] = backupsAt(join(stick, "Tapeline backups"));
  expect((await backups.list()).backups.every(({ place }) => place === "own")).toBe(true);
  const restore = backups.restore({ place: "second", name: old, passphrase: null });
  expect((await refusalOf(restore)).key).toBe("backups.gone");
  clock.pass(6);
  await people.setConsent({ athleteId: 2, board: "hidden", share: false });
  await keeper.runWhenDue();
  expect(backupsAt(join(stick, "Tapeline backups"))).toEqual([expect.stringContaining("-000006-")]);
  expect((await backups.state()).toForget).toBe(false);
  const oldest = after.at(-1);
  await backups.restore({ place: "own", name: oldest?.name ?? "", passphrase: null });
  expect((await people.list({})).people.map(({ name }) => name)).toEqual(["Bo Crank"]);
});

test("whoever had another name before goes from the backups of before too", async () => {
  const { desk, backups, people, keeper, folder } = backedUpDesk();
  fill(desk, ["Zzyzx Quillfeather", "Bo Crank", "Cy Loom"]);
  await keeper.run();
  await keeper.run();
  const rest = { number: "0", league: "Foundry Town", birthYear: 1999, category: "open" } as const;
  await people.mend({ athleteId: 1, ...rest, name: "Zyx Plume" });
  await keeper.run();
  await people.erase({ erasureId: randomUUID(), athleteId: 1, typed: "Zyx Plume", by: "QA" });
  expect((await backups.list()).backups.map(({ holding }) => holding.athletes)).toEqual([2, 2, 2, 2]);
  for (const bytes of everyByteIn(folder)) {
    expect(bytes.includes("Quillfeather")).toBe(false);
    expect(bytes.includes("Zyx Plume")).toBe(false);
  }
});

test("a backup in which somebody else had that id, or that can't be opened, is deleted", async () => {
  const { desk, backups, people, keeper, folder } = backedUpDesk();
  fill(desk, ["Zzyzx Quillfeather", "Bo Crank"]);
  await keeper.run();
  const own = join(folder, "backups");
  const [first = ""] = backupsAt(own);
  await keeper.run();
  const [, second = ""] = backupsAt(own);
  const whole = readFileSync(join(own, second));
  writeFileSync(join(own, second), whole.subarray(0, whole.length - 40));
  connectionOf(desk.store.db).exec("UPDATE athlete SET name = 'Uma Fox', folded = 'uma fox' WHERE id = 1");
  await people.erase({ erasureId: randomUUID(), athleteId: 1, typed: "Uma Fox", by: "QA" });
  expect(backupsAt(own)).not.toContain(first);
  expect((await backups.list()).backups.map(({ anew }) => anew)).toEqual([false]);
});

test("where the program ends between an erasure and its backups, the next start forgets them", async () => {
  const { folder, desk, backups, people, keeper } = backedUpDesk();
  fill(desk, ["Zzyzx Quillfeather", "Bo Crank"]);
  await keeper.run();
  // As after a crash: announced and erased, and nothing more.
  const erasureId = randomUUID();
  await keeper.announce(erasureId);
  desk.store.write([], (db) => {
    const athlete = athleteById(db, 1);
    if (athlete !== undefined) eraseAthlete(db, athlete, { id: erasureId, at: clockAt, by: "QA" }, []);
  });
  await keeper.look();
  expect((await backups.list()).backups).toEqual([]);
  await keeper.run();
  expect(backupsAt(join(folder, "backups"))).toHaveLength(1);
  // One that was announced and refused forgets nothing.
  await refusalOf(people.erase({ erasureId: randomUUID(), athleteId: 2, typed: "somebody", by: "QA" }));
  await keeper.look();
  expect((await backups.list()).backups).toHaveLength(1);
});

const clockAt = "2026-11-14T09:00:00.000Z";

test("erasing somebody at the door leaves their name in no file at all", async () => {
  const { folder, desk, keeper, people } = backedUpDesk();
  fill(desk, ["Zzyzx Quillfeather", "Bo Crank"]);
  await keeper.run();
  const [damaged = ""] = backupsAt(join(folder, "backups"));
  writeFileSync(
    join(folder, "tapeline.set-aside-2026-11-14T090000-1.sqlite"),
    "Zzyzx Quillfeather, set aside",
  );
  const erasureId = "3f9b1d7c-52c4-4a57-8d4e-0c1f7a9be001";
  expect(await people.erase({ erasureId, athleteId: 1, typed: "Zzyzx Quillfeather", by: "QA" })).toEqual({
    notWiped: null,
  });
  expect(backupsAt(join(folder, "backups"))).not.toContain(damaged);
  for (const bytes of everyByteIn(folder)) expect(bytes.includes("Quillfeather")).toBe(false);
});

/** Every file under a folder; a backup unpacked. */
function everyByteIn(folder: string): Buffer[] {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((each) => each.isFile());
  return names.flatMap(({ parentPath, name }) => {
    const bytes = readFileSync(join(parentPath, name));
    return name.endsWith(".backup") ? [bytes, inflateRawSync(bytes.subarray(2048))] : [bytes];
  });
}

test("a clock that jumps years ahead and back takes no backup with it", async () => {
  const { desk, keeper, clock, folder } = backedUpDesk();
  fill(desk);
  for (const at of [
    "2026-11-14T09:00:00Z",
    "2036-01-01T09:00:00Z",
    "2036-01-02T09:00:00Z",
    "2026-11-14T10:00:00Z",
  ]) {
    clock.at = new Date(at);
    await keeper.run();
  }
  expect(backupsAt(join(folder, "backups")).map((name) => name.slice(18, 24))).toHaveLength(4);
});
