import { createHash } from "node:crypto";
import { type Browser, expect, type Page } from "@playwright/test";
import type { Browser as Firefox } from "puppeteer-core";
import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { openDevice } from "./browsers.ts";
import { joinAs, joinFirefoxAs, test as withBrowsers } from "./devices.ts";
import { openFirefoxDevice } from "./firefox.ts";
import { callNext, checkIn, type Hands, type IsSaved, takePaper } from "./hall-hands.ts";
import { listedAthletes, past, roster } from "./hall-list.ts";
import { heatSize } from "./hall-live.ts";
import { hasAttempts, type Results, resultsOf } from "./hall-results.ts";
import { closeDay, haveShownBest, showCall, thankEverybody, watchAll } from "./hall-screens.ts";
import { type Station, takeAll } from "./hall-stations.ts";
import { joinTable, type Laptop, withLaptop } from "./joined-program.ts";
import { turnOnHere } from "./joining.ts";
import type { Eyes } from "./live.ts";
import { callDoor, goTo } from "./page.ts";
import type { Tapeline } from "./session.ts";
import { takeSheet } from "./sheets.ts";
import type { Station as Place } from "./stations.ts";

/**
 * One and the same list of the demo day, once at one desk and once over check-in and five stations: five browsers, a
 * joined program, and three big screens. `npm run hall` takes everybody on the list; fewer come where nobody says so.
 */
const athletes = listedAthletes(Number(process.env.HALL_ATHLETES ?? 2));

const test = withBrowsers.extend<{ laptop: Laptop; alone: Laptop }>({
  laptop: withLaptop,
  alone: withLaptop,
});

const places: Readonly<Record<TestCode, Place>> = {
  ...{ "push-up": "Strength", agility: "Agility", vertical: "Power", core: "Core", endurance: "Endurance" },
};

test("a day from five browsers and a joined program gives what the same day at one desk gives, to the byte", async ({
  tapeline,
  laptop,
  alone,
  chromium,
  firefox,
}) => {
  test.setTimeout(600_000 + athletes.length * 60_000);
  const one = await test.step("at one desk", async () => atOneDesk(await alone.page("desk")));
  tell("one desk", one);
  const hall = await test.step("everybody joins", () => openHall(tapeline, laptop, { chromium, firefox }));
  const many = await test.step("over the hall", () => overTheHall(hall));
  tell("the hall", many);
  expect(many.count).toEqual(expected(athletes.length));
  expect(many).toEqual(one);
  expect(sumOf(many.bundle)).toBe(sumOf(one.bundle));
  // Two files without a mark are equal too.
  expect(marksIn(many.bundle)).toBeGreaterThanOrEqual(athletes.length < enough ? 0 : athletes.length * 5);
  await test.step("the day ends on all big screens", () => endDay(hall));
  await hall.end();
});

/** Everybody's eight attempts, once each; of those who begin at two stations, two directions and three touches are live. */
function expected(count: number): Results["count"] {
  const [listed, live] = [count * 8, Math.min(count, heatSize) * (2 + 3)];
  return { listed, lost: 0, doubled: 0, live, keyed: listed - live };
}

/** Of fewer athletes than this the bundle may hold back every mark (`privacy/MODEL.md`). */
const enough = 20;

function marksIn(bundle: string): number {
  return bundle.split("\n").length - 2;
}

/** The SHA-256 of a file's bytes, as they are written. */
function sumOf(text: string): string {
  return createHash("sha256").update(text, "utf8").digest("hex");
}

/** How long it took is told by the runner. */
function tell(where: string, { whole, bundle, count }: Results): void {
  const { listed, lost, doubled, live, keyed } = count;
  const came = `${listed} attempts listed: ${live} live, ${keyed} keyed, ${lost} lost, ${doubled} doubled`;
  const marks = `marks.csv ${Buffer.byteLength(bundle)} bytes, ${marksIn(bundle)} marks`;
  const sheet = `athletes_marks.csv ${Buffer.byteLength(whole)} bytes`;
  console.log(`${where}: ${athletes.length} athletes; ${came}; ${marks}, SHA-256 ${sumOf(bundle)}; ${sheet}`);
}

async function openDay(desk: Page): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await takeSheet(desk, "roster", roster);
  await takeSheet(desk, "past", past);
  await callDoor(desk, "day.open", { sure: true });
  await desk.reload();
  await desk.getByRole("heading", { level: 1 }).first().waitFor();
}

async function atOneDesk(desk: Page): Promise<Results> {
  await openDay(desk);
  await goTo(desk, "Check-in");
  for (const athlete of athletes) await checkIn(desk, athlete);
  const here = athletes.map(() => Promise.resolve());
  for (const code of testCodes) {
    await goTo(desk, places[code]);
    await Promise.all(takeAll({ test: code, hands: desk, isSaved: savedAt(desk) }, athletes, here));
  }
  return resultsOf(desk, athletes);
}

const savedAt =
  (desk: Page): IsSaved =>
  (code, bib, count) =>
    hasAttempts(desk, code, bib, count);

/** A table, and everything that has joined it. */
interface Hall {
  readonly desk: Page;
  readonly door: Page;
  readonly stations: readonly Station[];
  readonly screens: readonly Eyes[];
  /** Says what the devices' browsers complained about, and closes them. */
  end(): Promise<void>;
}

interface Browsers {
  readonly chromium: Browser;
  readonly firefox: Firefox;
}

async function openHall(tapeline: Tapeline, laptop: Laptop, browsers: Browsers): Promise<Hall> {
  const { desk } = tapeline;
  await openDay(desk);
  const { inChromium, inFirefox, end } = joiners(desk, await turnOnHere(desk), browsers);
  const door = await inChromium("Door tablet", "Check-in");
  const hands: Readonly<Record<TestCode, Hands>> = {
    "push-up": await inChromium("Mat tablet", places["push-up"]),
    agility: await inFirefox("Cross tablet", places.agility),
    vertical: await inChromium("Wall tablet", places.vertical),
    core: await inFirefox("Plank tablet", places.core),
    endurance: await joinTable(desk, laptop, places.endurance),
  };
  const walls = [await inChromium("Left wall", "Big screen"), await inFirefox("Right wall", "Big screen")];
  const stations = testCodes.map((code) => ({ test: code, hands: hands[code], isSaved: savedAt(desk) }));
  return { desk, door, stations, screens: [await tapeline.openBoard(), ...walls], end };
}

/** Devices that join one table, a browser context of its own for each. */
function joiners(desk: Page, url: string, { chromium, firefox }: Browsers) {
  const open: { readonly complaints: readonly string[]; close(): Promise<void> }[] = [];
  return {
    async inChromium(name: string, place: string) {
      const device = await openDevice(chromium, 1024, 768);
      await joinAs(desk, device, url, name, place);
      open.push({ complaints: device.complaints, close: () => device.context.close() });
      return device.page;
    },
    async inFirefox(name: string, place: string) {
      const device = await openFirefoxDevice(firefox, 1024, 768);
      await joinFirefoxAs(desk, device, url, name, place);
      open.push(device);
      return device.page;
    },
    async end() {
      expect(open.flatMap(({ complaints }) => complaints)).toEqual([]);
      for (const { close } of open) await close();
    },
  };
}

async function overTheHall({ desk, door, stations, screens }: Hall): Promise<Results> {
  await watchAll(screens);
  await callFirst(door, stations, screens);
  await walkThrough(door, stations);
  return resultsOf(desk, athletes);
}

async function endDay({ desk, screens }: Hall): Promise<void> {
  await haveShownBest(screens);
  await closeDay(desk);
  await thankEverybody(screens, athletes.length);
}

/** The first athlete is checked in and called, and every big screen shows it. */
async function callFirst(door: Page, [mat]: readonly Station[], screens: readonly Eyes[]): Promise<void> {
  const [first] = athletes;
  if (first === undefined || mat === undefined) throw new Error("There is nobody, or no station.");
  await checkIn(door, first);
  await takePaper(mat.hands);
  await callNext(mat.hands);
  await showCall(screens, first.bib);
}

/** The others are checked in, and everybody goes through the stations: all of them are at work at the same time. */
async function walkThrough(door: Page, stations: readonly Station[]): Promise<void> {
  let before = Promise.resolve();
  let come = athletes.map((athlete, index) => {
    if (index > 0) before = before.then(() => checkIn(door, athlete));
    return before;
  });
  for (const station of stations) come = takeAll(station, athletes, come);
  await Promise.all(come);
}
