import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { storeOpener } from "../../electron/host/stores.ts";
import { dump } from "../store/hall.ts";
import { refusalOf, type TestDesk, testClock, testDesk } from "./desk.ts";
import { bring, look, take } from "./sheets.ts";

let folder: string;
let table: TestDesk;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "held-desk-"));
  table = testDesk(undefined, testClock(), { open: storeOpener(folder, undefined) });
  await table.as("organiser").day.create({ date: "2026-11-14", title: "Own day" });
});
afterEach(() => {
  table.desk.close();
  rmSync(folder, { recursive: true });
});

/** A roster that takes some turns of the event loop to read. */
function roster(prefix: string): string {
  const rows = Array.from(
    { length: 6000 },
    (_none, index) => `Foundry Town,${prefix} ${index},${index % 10000}`,
  );
  return ["league,name,number", ...rows].join("\n");
}

/** All that the store in use holds. */
function rows(): unknown[] {
  return [...dump(table.desk.store.db)];
}

/** Lets work that was begun go on for a while, and no further. */
async function aWhile(): Promise<void> {
  for (let turn = 0; turn < 3; turn += 1) await new Promise((resolve) => setImmediate(resolve));
}

test("a sheet begun in the demonstration stays out of the hall's own store, and the other way round", async () => {
  const organiser = table.as("organiser");
  const before = rows();
  await organiser.day.openDemo();
  const uploadId = await bring(table, roster("Demo"));
  const taking = organiser.intake.take({ uploadId, kind: "roster" });
  await aWhile();
  await organiser.day.leaveDemo();
  expect(await refusalOf(taking)).toEqual({ key: "door.otherStore" });
  expect(rows()).toEqual(before);

  const second = await bring(table, roster("Own"));
  const other = organiser.intake.take({ uploadId: second, kind: "roster" });
  await aWhile();
  // As the demonstration does it, which takes so long to be made that this sheet would be in before.
  table.desk.use("demo");
  const invented = rows();
  expect(await refusalOf(other)).toEqual({ key: "door.otherStore" });
  expect(rows()).toEqual(invented);
  table.desk.use("own");
  expect(rows()).toEqual(before);
});

test("what was brought to one store is not there in the other, nor kept where the store changed meanwhile", async () => {
  const organiser = table.as("organiser");
  await organiser.day.openDemo();
  const uploadId = await bring(table, "league,name\nFoundry Town,Ann");
  let send = () => {};
  const rest = new Promise<void>((resolve) => {
    send = resolve;
  });
  const slow = new ReadableStream({
    async pull(controller) {
      controller.enqueue(new TextEncoder().encode("league,name\nFoundry Town,Bo"));
      await rest;
      controller.close();
    },
  });
  const bringing = bring(table, slow);
  await aWhile();
  await organiser.day.leaveDemo();
  send();
  await expect(bringing).rejects.toMatchObject({ sentence: { key: "door.otherStore" } });
  expect(await refusalOf(organiser.intake.take({ uploadId, kind: "roster" }))).toEqual({
    key: "sheets.gone",
  });
});

test("a sheet that is only looked at is not held against another store", async () => {
  const organiser = table.as("organiser");
  await organiser.day.openDemo();
  const uploadId = await bring(table, roster("Demo"));
  const looking = look(table, { uploadId });
  await aWhile();
  await organiser.day.leaveDemo();
  await expect(looking).rejects.toMatchObject({ sentence: { key: "door.otherStore" } });
});

test("whoever changes the store goes on in it, and everybody after that", async () => {
  const organiser = table.as("organiser");
  await organiser.day.openDemo();
  await Promise.all([organiser.day.openDemo(), organiser.day.openDemo()]);
  expect((await organiser.day.current()).kind).toBe("demo");
  expect((await organiser.people.list({})).total).toBeGreaterThan(40);
  await organiser.day.leaveDemo();
  await take(table, "roster", "league,name\nFoundry Town,Ann");
  expect(table.faults).toEqual([]);
});
