import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { listeningOf } from "./sockets.ts";
import { joinAs, openTable, post, type Table } from "./table.ts";

/** A day is closed while devices are there: how long the table still listens, so that each of them hears it. */

let table: Table;
let before: string[];
let [fast, slow] = ["", ""];

beforeEach(async () => {
  // What waits on the wall of the network alone: sockets have timers of their own.
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  before = listeningOf("self");
  table = await openTable();
  fast = await joinAs(table, { role: "board" }, "Left wall");
  slow = await joinAs(table, { role: "board" }, "Right wall");
  await here(fast);
  await here(slow);
});
afterEach(async () => {
  vi.useRealTimers();
  await table.close();
});

async function closeDay(): Promise<void> {
  const organiser = table.as("organiser");
  await organiser.day.close({ dayId: (await organiser.day.current()).day?.id ?? 0 });
}

const outcome = (path: string, body: object, cookie: string) =>
  post(table, path, body, { cookie }).then(
    ({ status, text }) => `${status} ${text}`,
    ({ code }: { code: string }) => code,
  );
const here = (cookie: string) => outcome("/device/here", { waiting: 0, battery: null }, cookie);
const heard = (cookie: string) => outcome("/device/heard", {}, cookie);
const told = '410 {"why":"closed"}';

test("a device that asks twenty seconds after the day was closed still hears it", async () => {
  await closeDay();
  expect(await here(fast)).toBe(told);
  vi.advanceTimersByTime(20_000);
  expect(await here(slow)).toBe(told);
});

test("once each device has said that it heard, the page to join is there for a moment, and then nothing listens", async () => {
  await closeDay();
  expect(await here(fast)).toBe(told);
  expect(await heard(fast)).toBe("200 {}");
  expect(await heard(fast)).toBe("200 {}");
  vi.advanceTimersByTime(10_000);
  expect(await here(slow)).toBe(told);
  expect(await heard(slow)).toBe("200 {}");
  vi.advanceTimersByTime(4_000);
  expect(await here(slow)).toBe(told);
  vi.advanceTimersByTime(1_000);
  await vi.waitFor(() => expect(listeningOf("self")).toEqual(before));
  expect(await here(fast)).toBe("ECONNREFUSED");
});

test("one that never says so is waited for half a minute, and no longer", async () => {
  await closeDay();
  expect(await heard(fast)).toBe("200 {}");
  vi.advanceTimersByTime(29_900);
  expect(await here(slow)).toBe(told);
  vi.advanceTimersByTime(100);
  await vi.waitFor(() => expect(listeningOf("self")).toEqual(before));
});

test("one that was not heard of lately is not waited for", async () => {
  table.clock.tick(60_000);
  await here(fast);
  await closeDay();
  expect(await heard(fast)).toBe("200 {}");
  vi.advanceTimersByTime(5_000);
  await vi.waitFor(() => expect(listeningOf("self")).toEqual(before));
});

test("nobody else can say so: not who is unknown, and not who is still the table's", async () => {
  expect(await heard(fast)).toBe("401 ");
  await closeDay();
  expect(await heard(`__Host-tapeline=${"A".repeat(43)}`)).toBe("401 ");
  expect((await post(table, "/device/heard", {})).status).toBe(401);
  expect((await post(table, "/device/heard", { all: true }, { cookie: fast })).status).toBe(400);
  vi.advanceTimersByTime(20_000);
  expect(await here(slow)).toBe(told);
});

test("a table that is turned on again in between waits no longer", async () => {
  await closeDay();
  await table.as("organiser").day.create({ date: "2026-11-14", title: "Evening" });
  await table.as("organiser").day.open();
  await table.network.turnOn("127.0.0.1", table.port);
  vi.advanceTimersByTime(60_000);
  expect(await here(slow)).toBe(told);
  expect(table.network.view().on?.port).toBe(table.port);
});
