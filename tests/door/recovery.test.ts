import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { createRecovery } from "../../electron/backups/recovery.ts";
import { Refusal } from "../../electron/domain/refusal.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { StoreRefused } from "../../electron/store/connection/refused.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { addAthlete, leagueNamed } from "../../electron/store/tables/athletes.ts";
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

/** A hall with three backups, the second made by a clock that is a year ahead; closed, and damaged by one bit. */
async function hallWithJumpingClock(stick: string) {
  const hall = backedUpDesk();
  fill(hall.desk);
  await hall.keeper.chooseSecond(stick);
  for (const [index, days] of [0, 365, -364].entries()) {
    hall.clock.pass(days * 24 * 60);
    addSomebody(hall.desk.store, index);
    await hall.keeper.run();
  }
  const listed = (await hall.backups.list()).backups;
  hall.desk.store.close();
  bend(hall.file, (bytes) => bytes.indexOf("Ada Rill"));
  return { ...hall, listed, recovery: createRecovery({ file: hall.file }, refusedStore(hall.file), now) };
}

function addSomebody(store: Store, index: number): void {
  store.write(["people"], (db) => {
    const [name, number] = [`Skater ${index}`, `9${index}`];
    addAthlete(db, {
      leagueId: leagueNamed(db, "Foundry Town"),
      ...{ name, number, birthYear: null, category: null },
      ...{ guardianConsent: false, board: "bib", share: false, asked: false },
    });
  });
}

test("backups are offered by number, whatever the clock said, and the newest is the one that is proved", async () => {
  const { recovery, listed } = await hallWithJumpingClock(temporaryFolder());
  const offers = (await recovery.offers()).backups;
  expect(offers.map(({ holding, proved, own }) => [holding.athletes, proved, own])).toEqual([
    [5, true, true],
    [4, false, true],
    [3, false, true],
  ]);
  expect(offers[1]?.at.slice(0, 4)).toBe("2027");
  expect(listed.map(({ holding }) => holding.athletes)).toEqual([5, 4, 3]);
});

test("another hall's backups on the same stick stand below this one's, and are none of its own", async () => {
  const stick = temporaryFolder();
  const other = backedUpDesk();
  fill(other.desk, ["Bo Crank"]);
  other.clock.pass(365 * 24 * 60);
  await other.keeper.chooseSecond(stick);
  for (let count = 0; count < 6; count += 1) await other.keeper.run();
  const { recovery, listed, keeper } = await hallWithJumpingClock(stick);
  const offers = (await recovery.offers()).backups;
  expect(offers.map(({ own }) => own)).toEqual([true, true, true, false, false, false, false]);
  expect(offers.map(({ proved }) => proved)).toEqual([true, ...Array(6).fill(false)]);
  expect(offers.slice(0, 3).map(({ source }) => source)).toEqual(Array(3).fill(keeper.settings().source));
  expect(new Set(offers.slice(3).map(({ source }) => source))).toEqual(
    new Set([other.keeper.settings().source]),
  );
  expect(listed.map(({ own }) => own)).toEqual([...Array(3).fill(true), ...Array(6).fill(false)]);
});

test("where this computer's own name is lost, what lies beside the store is its own", async () => {
  const stick = temporaryFolder();
  const { folder, file } = await hallWithJumpingClock(stick);
  rmSync(join(folder, "backups.json"));
  const recovery = createRecovery({ file }, refusedStore(file), now);
  recovery.lookIn(stick);
  expect((await recovery.offers()).backups.map(({ own }) => own)).toEqual([true, true, true]);
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
