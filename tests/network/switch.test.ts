import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { networkFiles } from "../../electron/host/network-files.ts";
import { refusalOf, testClock } from "../door/desk.ts";
import { connectionOf } from "../store/connection.ts";
import { networkInMemory } from "./in-memory.ts";
import { listeningOf } from "./sockets.ts";
import { address, dial, holdDay, joinAs, openTable, post, send, type Table } from "./table.ts";

const here = (table: Table, cookie: string) =>
  post(table, "/device/here", { waiting: 2, battery: 80 }, { cookie }).then(
    ({ status }) => status,
    ({ code }: { code: string }) => code,
  );

const rows = ({ desk }: Table) => connectionOf(desk.store.db).prepare("SELECT name FROM device").all().length;

test("with the switch off nothing listens; on, it listens at one address and nowhere else; off, nothing again", async () => {
  const before = listeningOf("self");
  const table = await openTable({ off: true });
  await holdDay(table);
  expect(listeningOf("self")).toEqual(before);
  await table.network.turnOn(address, table.port);
  const port = table.port.toString(16).toUpperCase().padStart(4, "0");
  // 127.0.0.1, the bytes as the machine has them.
  expect(listeningOf("self").filter((each) => !before.includes(each))).toEqual([`tcp 0100007F:${port}`]);
  await table.network.turnOff();
  expect(listeningOf("self")).toEqual(before);
  await table.close();
});

test("it goes off when the day is closed, and the day's devices are forgotten", async () => {
  const before = listeningOf("self");
  const table = await openTable();
  const cookie = await joinAs(table, { role: "board" });
  expect(await here(table, cookie)).toBe(200);
  expect(rows(table)).toBe(1);
  const { day } = await table.as("organiser").day.current();
  await table.as("organiser").day.close({ dayId: day?.id ?? 0 });
  // For a while it still says so to devices that are there, and answers nothing else.
  expect(table.network.view()).toMatchObject({ on: null, devices: [] });
  const told = await post(table, "/device/here", { waiting: 0, battery: null }, { cookie });
  expect(told).toMatchObject({ status: 410, text: '{"why":"closed"}' });
  expect((await send(table, "/trpc/board.view", { cookie })).status).toBe(401);
  expect((await post(table, "/device/heard", {}, { cookie })).status).toBe(200);
  await expect.poll(() => listeningOf("self"), { timeout: 15_000 }).toEqual(before);
  expect(await here(table, cookie)).toBe("ECONNREFUSED");
  expect(rows(table)).toBe(0);
  await table.close();
});

test("it goes off at once when the day is closed and no device is there to hear it", async () => {
  const before = listeningOf("self");
  const table = await openTable();
  const cookie = await joinAs(table, { role: "board" });
  expect(await here(table, cookie)).toBe(200);
  table.clock.tick(60_000);
  const { day } = await table.as("organiser").day.current();
  await table.as("organiser").day.close({ dayId: day?.id ?? 0 });
  expect(await here(table, cookie)).toBe("ECONNREFUSED");
  expect(listeningOf("self")).toEqual(before);
  await table.close();
});

test("a device hears that its day was closed when the table is there again, after the program was started anew", async () => {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-switch-"));
  const [file, keep] = [join(folder, "tapeline.sqlite"), networkFiles(folder)];
  const first = await openTable({ file, keep });
  const cookie = await joinAs(first, { role: "board" });
  await first.network.turnOff();
  const organiser = first.as("organiser");
  await organiser.day.close({ dayId: (await organiser.day.current()).day?.id ?? 0 });
  await first.close();

  const second = await openTable({ file, keep, off: true });
  await second.as("organiser").day.create({ date: "2026-11-14", title: "Evening" });
  await second.as("organiser").day.open();
  await second.network.turnOn(address, second.port);
  const told = await post(second, "/device/here", { waiting: 0, battery: null }, { cookie });
  expect(told).toMatchObject({ status: 410, text: '{"why":"closed"}' });
  await second.close();
  rmSync(folder, { recursive: true });
});

test("it goes off when the table turns to the demo, whose athletes are nobody", async () => {
  const table = await openTable();
  await table.as("organiser").day.openDemo();
  expect(table.network.view().on).toBeNull();
  await table.close();
});

test("there is nothing to join without a day", async () => {
  const table = await openTable({ off: true });
  const turned = table.as("organiser").network.turnOn({ address, port: table.port });
  expect((await refusalOf(turned)).key).toBe("network.noDay");
  await table.close();
});

test("turned off and on again, a device is still who it was; its key is the same", async () => {
  const table = await openTable();
  const cookie = await joinAs(table, { role: "check-in" });
  const { shortForm } = table.network.view().on ?? { shortForm: "" };
  await table.network.turnOff();
  expect(await here(table, cookie)).toBe("ECONNREFUSED");
  await table.network.turnOn(address, table.port);
  expect(await here(table, cookie)).toBe(200);
  expect(table.network.view().on?.shortForm).toBe(shortForm);
  expect(table.network.view().devices).toMatchObject([
    { name: "Red tablet", word: { waiting: 2, battery: 80 } },
  ]);
  await table.close();
});

test("a program started anew on the same day goes on where it was; on another day it is off", async () => {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-switch-"));
  const file = join(folder, "tapeline.sqlite");
  const keep = networkFiles(folder);
  const clock = testClock();
  const first = await openTable({ file, keep, clock });
  const cookie = await joinAs(first, { role: "board" });
  await first.close();
  expect(statSync(join(folder, "network.json")).mode & 0o777).toBe(0o600);

  const second = await openTable({ file, keep, clock, off: true });
  await second.network.resume();
  expect(second.network.view().on?.port).toBe(first.port);
  const same = { ...second, port: first.port, origin: first.origin };
  expect(await here(same, cookie)).toBe(200);
  await second.close();

  clock.pass(24 * 60);
  const third = await openTable({ file, keep, clock, off: true });
  await third.network.resume();
  expect(third.network.view()).toMatchObject({ on: null, port: first.port });
  await third.network.resume();
  expect(third.network.view().on).toBeNull();
  await third.close();
  rmSync(folder, { recursive: true });
});

test("a switch that can't be read is off", async () => {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-switch-"));
  writeFileSync(join(folder, "network.json"), '{"on":true}');
  const table = await openTable({ keep: networkFiles(folder), off: true });
  await holdDay(table);
  await table.network.resume();
  expect(table.network.view().on).toBeNull();
  await table.close();
  rmSync(folder, { recursive: true });
});

test("an address of another computer, of everybody or of nobody is refused, and so is a port that is taken", async () => {
  const table = await openTable({ off: true });
  await holdDay(table);
  const turn = (to: { address: string; port: number }) => table.as("organiser").network.turnOn(to);
  const { port } = table;
  for (const other of ["192.0.2.7", "0.0.0.0", "::"]) {
    expect([other, (await refusalOf(turn({ address: other, port }))).key]).toEqual([
      other,
      "network.otherAddress",
    ]);
  }
  const neighbour = createServer();
  await new Promise<void>((resolve) => neighbour.listen(port, address, resolve));
  expect(await refusalOf(turn({ address, port }))).toEqual({ key: "network.portTaken", values: { port } });
  expect(table.network.view().on).toBeNull();
  await new Promise((resolve) => neighbour.close(resolve));
  await turn({ address, port });
  expect(table.network.view().on?.url).toBe(`https://${address}:${port}/`);
  await table.close();
});

test("the table sees through its own door what it needs: the code, who asks, and who is there", async () => {
  const table = await openTable({ keep: networkInMemory() });
  const organiser = table.as("organiser");
  await organiser.network.openJoining();
  const { code, on } = await organiser.network.view();
  expect(code?.code).toMatch(/^\w{4} \w{4}$/);
  expect(code?.link).toBe(`${on?.url}#${code?.code.replace(" ", "")}`);
  await post(table, "/join/ask", { code: code?.code, name: "Blue phone" });
  const [asking] = (await organiser.network.view()).asking;
  await organiser.network.answer({ askId: asking?.id ?? "", place: { role: "board" } });
  const gone = organiser.network.answer({ askId: asking?.id ?? "", place: { role: "board" } });
  expect((await refusalOf(gone)).key).toBe("network.askedNoMore");
  await table.close();
});

test("the change feed goes on over the network after the last event that a device had", async () => {
  const table = await openTable();
  const cookie = await joinAs(table, { role: "board" });
  const first = await eventsOf(table, cookie, null, 1);
  await table.as("organiser").board.hide({ hidden: true });
  await table.as("organiser").board.hide({ hidden: false });
  const last = first.at(-1)?.id ?? "";
  const missed = await eventsOf(table, cookie, last, 2);
  expect(missed.map(({ data }) => data)).toEqual([["board"], ["board"]]);
  await table.close();
});

/** Reads a device's stream up to so many changes. */
async function eventsOf(table: Table, cookie: string, lastId: string | null, count: number) {
  const raw = await dial(table);
  const last = lastId === null ? "" : `Last-Event-ID: ${lastId}\r\n`;
  raw.socket.write(
    `GET /trpc/changes HTTP/1.1\r\nHost: ${address}:${table.port}\r\nCookie: ${cookie}\r\n${last}Accept: text/event-stream\r\n\r\n`,
  );
  // Without the lengths between the parts in which it was sent (chunked, RFC 9112 7.1).
  const text = () => raw.came().replaceAll(/\r\n(?:[0-9a-f]+\r\n)?/g, "");
  const found = () =>
    [...text().matchAll(/^data: (.*)\nid: (.*)$/gm)].map(([, data = "", id = ""]) => ({
      id,
      data: (JSON.parse(data) as { topics: string[] }).topics,
    }));
  while (found().length < count) await new Promise((resolve) => setTimeout(resolve, 5));
  raw.socket.destroy();
  return found();
}
