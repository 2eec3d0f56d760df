import { type Browser, expect, type Page } from "@playwright/test";
import type { Browser as Firefox } from "puppeteer-core";
import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { freePort } from "../network/table.ts";
import { openDevice } from "./browsers.ts";
import { joinAs, test as withChromium } from "./devices.ts";
import { readDoor } from "./devices-kept.ts";
import { openFirefoxDevice, startFirefox } from "./firefox.ts";
import { checkIn, type Hands, keyIn, takePaper } from "./hall-hands.ts";
import { type ListedAthlete, listedAthletes, roster } from "./hall-list.ts";
import { askToJoin, type Laptop, letIn, openLaptop, shownAt } from "./joined-program.ts";
import { letIn as letDeviceIn, readCode } from "./joining.ts";
import { callDoor, goTo } from "./page.ts";
import type { Tapeline } from "./session.ts";

/**
 * One and the same list, once at one desk and once over check-in and five stations: five browsers, a joined program, and
 * three big screens. `npm run hall` takes everybody of the demo's list; here a few come.
 */
const athletes = listedAthletes(Number(process.env.HALL_ATHLETES ?? 2));

const test = withChromium.extend<{ laptop: Laptop; one: Laptop }, { firefox: Firefox }>({
  firefox: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from this pattern.
    async ({}, use) => {
      const browser = await startFirefox();
      await use(browser);
      await browser.close();
    },
    { scope: "worker", timeout: 600_000 },
  ],
  laptop: async ({ stage }, use) => {
    const laptop = await openLaptop(stage);
    await use(laptop);
    await laptop.end();
  },
  one: async ({ stage }, use) => {
    const laptop = await openLaptop(stage);
    await use(laptop);
    await laptop.end();
  },
});

const places = ["Strength", "Agility", "Power", "Core", "Endurance"] as const;

test("a day from five browsers and a joined program gives what the same day at one desk gives, to the byte", async ({
  tapeline,
  laptop,
  one,
  chromium,
  firefox,
}) => {
  test.setTimeout(300_000 + athletes.length * 60_000);
  const desk = await one.page("desk");
  const alone = await test.step("at one desk", () => atOneDesk(desk));
  const hall = await test.step("over the hall", () => overTheHall(tapeline, laptop, chromium, firefox));
  expect(alone.whole.split("\n").length).toBeGreaterThan(athletes.length * testCodes.length);
  expect(hall.whole).toBe(alone.whole);
  expect(hall.bundle).toBe(alone.bundle);
});

async function openDay(desk: Page): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await takeRoster(desk);
  await callDoor(desk, "day.open", { sure: true });
  await desk.reload();
  await desk.getByRole("heading", { level: 1 }).first().waitFor();
}

/** Takes the demo's roster in, as the sheets' screen does. */
async function takeRoster(desk: Page): Promise<void> {
  const uploadId = await desk.evaluate(async (text) => {
    const headers = { "content-type": "application/octet-stream" };
    const body = new TextEncoder().encode(text);
    const answer = await fetch("/trpc/intake.upload", { method: "POST", headers, body });
    return (await answer.json()).result.data.uploadId as string;
  }, roster);
  await callDoor(desk, "intake.take", { uploadId, kind: "roster" });
}

/** How many attempts of somebody the table has at a test. */
async function countAt(desk: Page, code: TestCode, bib: number): Promise<number> {
  const view = (await readDoor(desk, "station.view", { test: code, lengths: "cm" })) as {
    readonly recent: readonly { readonly attempt: { readonly who: { readonly bib: number } } }[];
  };
  return view.recent.filter(({ attempt }) => attempt.who.bib === bib).length;
}

function keyAt(desk: Page, hands: Hands, code: TestCode, athlete: ListedAthlete): Promise<void> {
  return keyIn(hands, code, athlete, async (least) => (await countAt(desk, code, athlete.bib)) >= least);
}

async function atOneDesk(desk: Page) {
  await openDay(desk);
  await goTo(desk, "Check-in");
  for (const athlete of athletes) await checkIn(desk, athlete);
  for (const [index, code] of testCodes.slice(0, places.length).entries()) {
    await goTo(desk, places[index] ?? "");
    await takePaper(desk);
    for (const athlete of athletes) await keyAt(desk, desk, code, athlete);
  }
  return sheetsOf(desk);
}

async function overTheHall(tapeline: Tapeline, laptop: Laptop, chromium: Browser, firefox: Firefox) {
  const { desk } = tapeline;
  await openDay(desk);
  const port = await freePort();
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
  await desk.evaluate(() => {
    location.hash = "/devices";
  });
  await desk.getByRole("heading", { name: "Let a device join" }).waitFor();
  const url = `https://127.0.0.1:${port}/`;
  const complaints: string[][] = [];
  const ends: (() => Promise<void>)[] = [];
  const inChromium = async (name: string, place: string) => {
    const device = await openDevice(chromium, 1024, 768);
    await joinAs(desk, device, url, name, place);
    complaints.push(device.complaints);
    ends.push(() => device.context.close());
    return device.page;
  };
  const inFirefox = async (name: string, place: string) => {
    const device = await openFirefoxDevice(firefox, 1024, 768);
    const { page } = device;
    const code = await readCode(desk);
    await page.goto(url);
    await page.locator('aria/Code[role="textbox"]').fill(code.toLowerCase());
    await page.locator('aria/Name of this device[role="textbox"]').fill(name);
    await page.locator('aria/Ask to join[role="button"]').click();
    await letDeviceIn(desk, name, place);
    complaints.push(device.complaints);
    ends.push(() => device.close());
    return page;
  };
  const door = await inChromium("Door tablet", "Check-in");
  const stations: Hands[] = [
    await inChromium("Mat tablet", "Strength"),
    await inFirefox("Cross tablet", "Agility"),
    await inChromium("Wall tablet", "Power"),
    await inFirefox("Plank tablet", "Core"),
    await joinLaptop(desk, laptop, "Endurance"),
  ];
  const screens: { evaluate(script: string): Promise<unknown> }[] = [
    await tapeline.openBoard(),
    await inChromium("Left wall", "Big screen"),
    await inFirefox("Right wall", "Big screen"),
  ];
  await walkThrough(desk, door, stations);
  const last = athletes.at(-1)?.name ?? "";
  for (const screen of screens) {
    await expect
      .poll(() => screen.evaluate("document.body.innerText.toLowerCase()"))
      .toContain(last.toLowerCase());
  }
  const sheets = await sheetsOf(desk);
  expect(complaints.flat()).toEqual([]);
  for (const end of ends) await end();
  return sheets;
}

async function joinLaptop(desk: Page, laptop: Laptop, place: string): Promise<Page> {
  const first = await laptop.page("desk");
  await first.getByRole("link", { name: "Join a table" }).click();
  await askToJoin(first, await shownAt(desk));
  await first.getByText("Waiting for the organiser's yes.").waitFor();
  await letIn(desk, place);
  return laptop.page("device");
}

/** Everybody goes from check-in through the stations; all of them enter at the same time, each who has come to it. */
async function walkThrough(desk: Page, door: Page, stations: readonly Hands[]): Promise<void> {
  const ready = Promise.all(stations.map(takePaper));
  let come: Promise<void>[] = [];
  let before: Promise<void> = ready.then(() => undefined);
  for (const athlete of athletes) {
    before = before.then(() => checkIn(door, athlete));
    come.push(before);
  }
  for (const [index, hands] of stations.entries()) {
    const code = testCodes[index];
    if (code === undefined) throw new Error("There are more stations than tests.");
    let free: Promise<void> = Promise.resolve();
    const left: Promise<void>[] = [];
    for (const [place, athlete] of athletes.entries()) {
      free = Promise.all([free, come[place]]).then(() => keyAt(desk, hands, code, athlete));
      left.push(free);
    }
    come = left;
  }
  await Promise.all(come);
}

/** The day's marks as files: the organiser's sheet of them all, and what would leave in the bundle. */
async function sheetsOf(desk: Page): Promise<{ whole: string; bundle: string }> {
  const sheet = (await readDoor(desk, "summary.sheet", { name: "athletes_marks.csv" })) as {
    readonly text: string;
  };
  const { files } = (await readDoor(desk, "bundle.preview", {})) as {
    readonly files: readonly { readonly name: string; readonly text: string }[];
  };
  const marks = files.find(({ name }) => name === "marks.csv");
  if (marks === undefined) throw new Error("The bundle has no marks.csv.");
  return { whole: sheet.text, bundle: marks.text };
}
