import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { newLock } from "../../electron/backups/cipher.ts";
import { packBackup, unpackBackup } from "../../electron/backups/file.ts";
import { createKeeper } from "../../electron/backups/keeper.ts";
import { workHere } from "../../electron/backups/work.ts";
import { backupsApart } from "../../electron/host/backup-work.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { temporaryFolder } from "../door/backups-desk.ts";
import { makeHall } from "../faults/hall.ts";
import { enter } from "../faults/images.ts";

const nobody = { days: 0, athletes: 0, attempts: 0, newestAttempt: null };
const facts = { number: 1, source: "3f09ab12", at: "2026-11-14T09:00:00.000Z", holding: nobody };

/** The hall's store, and the keeper of its backups with so much done apart. */
function kept(work = backupsApart()) {
  const folder = temporaryFolder();
  const file = join(folder, "tapeline.sqlite");
  const store = openStore({ file });
  makeHall(store, 40);
  const keeper = createKeeper({
    ...{ location: { file }, work, own: () => store, networkKey: () => null },
    ...{ now: () => new Date("2026-11-14T09:00:00Z"), ms: () => 0 },
  });
  const backups = () => readdirSync(join(folder, "backups"));
  return { folder, file, store, keeper, backups };
}

test("entries go on while a backup is checked and packed elsewhere, and it holds all that was entered before", async () => {
  const { folder, store, keeper, backups } = kept();
  for (let index = 0; index < 20; index += 1) enter(store, index);
  let isOver = false;
  const backup = keeper.run().then(() => {
    isOver = true;
  });
  let [during, turns] = [20, 0];
  while (!isOver) {
    // A turn of this thread for each: it is held up by nothing that a backup does.
    await new Promise(setImmediate);
    turns += 1;
    if (turns % 50 === 0 && during < 60) {
      enter(store, during);
      during += 1;
    }
  }
  await backup;
  const [name = ""] = backups();
  expect(backups()).toEqual([name]);
  const { header } = await unpackBackup(join(folder, "backups", name), null);
  expect(header.holding.attempts).toBeGreaterThanOrEqual(20);
  expect(during).toBeGreaterThan(20);
  store.close();
});

test("all that takes long is asked of somebody else, in this order, and the copy is gone when it is done", async () => {
  const order: string[] = [];
  const { folder, store, keeper, backups } = kept({
    async check(copy) {
      order.push(`check ${existsSync(copy.file)}`);
      return workHere.check(copy);
    },
    async pack(target, toPack) {
      order.push("pack");
      expect("file" in toPack.from && existsSync(toPack.from.file)).toBe(true);
      // Nothing has a backup's name before it was read back.
      expect(readdirSync(join(folder, "backups")).every((name) => name.startsWith("."))).toBe(true);
      await workHere.pack(target, toPack);
    },
  });
  await keeper.run();
  expect(order).toEqual(["check true", "pack"]);
  expect(backups().filter((name) => name.startsWith("."))).toEqual([]);
  expect(backups()).toHaveLength(1);
  store.close();
});

test("a copy that is not whole becomes no backup, whoever checks it, and the reason comes back", async () => {
  const { folder, store, keeper, backups } = kept();
  // Under every check of SQLite's: only scoring it again shows it.
  enter(store, 0);
  store.write([], (db) => db.exec("UPDATE mark SET value = value + 1"));
  await keeper.run();
  expect(backups()).toEqual([]);
  expect(keeper.news("own").trouble).toMatchObject({ key: "backups.failed" });
  expect(String(keeper.news("own").trouble?.values?.message)).toContain("does not follow");
  rmSync(join(folder, "backups"), { recursive: true });
  store.close();
});

test.each([null, "locked"])(
  "a thread packs what this one reads back (%s), with its errors' codes",
  async (how) => {
    const lock = how === null ? null : await newLock("correct horse staple");
    const folder = temporaryFolder();
    const [store, target] = [join(folder, "store"), join(folder, "packed")];
    const bytes = Buffer.from(Array.from({ length: 300_000 }, (_, at) => (at * at) % 251));
    writeFileSync(store, bytes);
    const { createHash } = await import("node:crypto");
    const sha256 = createHash("sha256").update(bytes).digest("hex");
    const from = { file: store, bytes: bytes.length, sha256 };
    const toPack = { from, facts, lock, networkKey: lock === null ? null : "a key" };
    await backupsApart().pack(target, toPack);
    expect(statSync(target).mode & 0o777).toBe(0o600);
    const opener = lock === null ? null : { lock };
    expect(await unpackBackup(target, opener)).toMatchObject({ store: bytes, networkKey: toPack.networkKey });
    await expect(backupsApart().pack(target, toPack)).rejects.toMatchObject({ code: "EEXIST" });
    // Told of other bytes than there are, it is no backup.
    const wrong = {
      ...toPack,
      from: { ...from, sha256: sha256.replace(/^./, (digit) => (digit === "0" ? "1" : "0")) },
    };
    await expect(packBackup(join(folder, "wrong"), wrong)).rejects.toThrow("unreadable");
    if (lock === null) return;
    // One bit anywhere behind the header is the wrong key, before any of it is unpacked.
    const packed = readFileSync(target);
    for (const at of [2048, 2048 + 1000, packed.length - 1]) {
      const bent = Buffer.from(packed);
      bent.writeUInt8(bent.readUInt8(at) ^ 1, at);
      writeFileSync(target, bent);
      await expect(unpackBackup(target, opener)).rejects.toThrow("wrong-passphrase");
    }
  },
);
