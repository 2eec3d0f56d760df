import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { createRecovery } from "../../electron/api/backups/recovery.ts";
import { Refusal } from "../../electron/domain/refusal.ts";
import { openStore } from "../../electron/store/open.ts";
import { StoreRefused } from "../../electron/store/refused.ts";
import { dump } from "../store/hall.ts";
import { backedUpDesk, fill, temporaryFolder } from "./backups-desk.ts";

const now = () => new Date("2026-11-14T12:00:00Z");

function refusedStore(file: string): StoreRefused {
  try {
    openStore({ file }).close();
  } catch (error) {
    if (error instanceof StoreRefused) return error;
    throw error;
  }
  throw new Error("it should have been refused");
}

function bend(file: string, at: (bytes: Buffer) => number): void {
  const bytes = readFileSync(file);
  bytes.writeUInt8(bytes.readUInt8(at(bytes)) ^ 1, at(bytes));
  writeFileSync(file, bytes);
}

/** A store with two backups, closed, and then damaged by one bit of a name. */
async function damagedHall() {
  const hall = backedUpDesk();
  fill(hall.desk);
  await hall.keeper.run();
  const rows = dump(hall.desk.store.db);
  hall.clock.pass(1);
  await hall.keeper.run();
  hall.desk.store.close();
  bend(hall.file, (bytes) => bytes.indexOf("Ada Rill"));
  const refused = refusedStore(hall.file);
  return { ...hall, rows, refused, recovery: createRecovery({ file: hall.file }, refused, now) };
}

test("the newest backup that is whole is offered first, with what it holds and lacks", async () => {
  const { folder, recovery, refused, file, rows } = await damagedHall();
  expect(refused.reason).toBe("changed");
  const [newest = ""] = readdirSync(join(folder, "backups")).sort().reverse();
  bend(join(folder, "backups", newest), (bytes) => bytes.length - 60);
  const offers = await recovery.offers();
  expect(offers).toMatchObject({ anything: true, asItIs: true, held: { athletes: 2, attempts: 6 } });
  expect(offers.backups).toMatchObject([
    { at: "2026-11-14T09:00:00.000Z", proved: true, locked: false, holding: { athletes: 2, attempts: 6 } },
  ]);
  await recovery.goBack(0, null);
  const store = openStore({ file });
  expect(dump(store.db)).toEqual(rows);
  store.close();
});

test("nothing is moved by looking, and what is there is set aside by beginning anew", async () => {
  const { folder, recovery, file } = await damagedHall();
  const before = readdirSync(folder).sort();
  const bytes = readFileSync(file);
  await recovery.offers();
  expect(readdirSync(folder).sort()).toEqual(before);
  recovery.startAnew();
  expect(existsSync(file)).toBe(false);
  const aside = readdirSync(folder).find((name) => name.endsWith("-1.sqlite")) ?? "";
  expect(readFileSync(join(folder, aside))).toEqual(bytes);
});

test("backups elsewhere are found where somebody looks, also behind a passphrase", async () => {
  const hall = backedUpDesk();
  fill(hall.desk);
  const stick = temporaryFolder();
  await hall.keeper.chooseSecond(stick);
  await hall.keeper.choosePassphrase("forty wet wheels on maple");
  await hall.keeper.run();
  // Another computer, on which there was once a store and is nothing now.
  const folder = temporaryFolder();
  const file = join(folder, "tapeline.sqlite");
  openStore({ file }).close();
  renameSync(file, `${file}.lost`);
  const refused = refusedStore(file);
  expect(refused.reason).toBe("gone");
  const recovery = createRecovery({ file }, refused, now);
  expect((await recovery.offers()).backups).toEqual([]);
  recovery.lookIn(stick);
  expect((await recovery.offers()).backups).toMatchObject([{ locked: true, proved: false }]);
  await expect(recovery.goBack(0, "not it at all")).rejects.toThrow(Refusal);
  await expect(recovery.goBack(7, null)).rejects.toThrow(Refusal);
  await recovery.goBack(0, "forty wet wheels on maple");
  const store = openStore({ file });
  expect(dump(store.db)).toEqual(dump(hall.desk.store.db));
  store.close();
});

test("a whole store of a newer version is not ours to move", async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, "backups"));
  const file = join(folder, "tapeline.sqlite");
  openStore({ file }).close();
  const recovery = createRecovery({ file }, new StoreRefused("newer", { version: 99, known: 3 }), now);
  expect(await recovery.offers()).toMatchObject({ anything: false, asItIs: false, backups: [] });
  recovery.startAnew();
  expect(existsSync(file)).toBe(true);
});
