import type { Browser, Page } from "@playwright/test";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { resize } from "../e2e/board-picture.ts";
import { openDevice, startChromium } from "../e2e/browsers.ts";
import { joinAs } from "../e2e/devices.ts";
import { callDoor } from "../e2e/page.ts";
import { keyFromPaper } from "../e2e/stations.ts";
import { watchCount } from "../faults/soak-windows.ts";
import { freePort } from "../network/table.ts";
import { devicesOfTest } from "./hall-day.ts";
import { makeBare } from "./hall-floor.ts";
import { watchStation } from "./hall-page.ts";
import type { Program } from "./windows.ts";

/** A page at a station. */
export interface AtStation {
  readonly page: Page;
  readonly test: TestCode;
}

/** The hall while its program runs: all pages note what they do. */
export interface Hall {
  /** The process with the table's store and server. */
  readonly tableId: number;
  /** Where the table is reached on this machine. */
  readonly port: number;
  /** The table's own window, at the leap. */
  readonly table: AtStation;
  readonly devices: readonly AtStation[];
  /** The board's window and two televisions. */
  readonly boards: readonly Page[];
  /** A joined page that does no more than paint what it is told. */
  readonly bare: Page;
  /** Closes all devices and turns the screens at the stations off. */
  end(): Promise<void>;
}

/**
 * Opens the hall for `work`: every device joins as people do, in one Chromium of the system with a context each, which have
 * processes of their own. Every second device is a phone.
 */
export async function withHall<Day, Seen>(
  { app, desk, board }: Program<Day>,
  work: (hall: Hall) => Promise<Seen>,
): Promise<Seen> {
  const browser = await startChromium();
  try {
    const tableId = await app.evaluate(() => process.pid);
    const port = await freePort();
    await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
    const url = `https://127.0.0.1:${port}/`;
    await goTo(desk, "/devices");
    const devices = await joinStations(desk, browser, url);
    const boards = [
      board,
      ...(await joinTelevisions(desk, browser, url, ["Left television", "Right television"])),
    ];
    const [bare] = await joinTelevisions(desk, browser, url, ["Bare page"]);
    if (bare === undefined) throw new Error("No page joined.");
    await makeBare(bare);
    await resize(board, { width: 1920, height: 1080 });
    for (const each of boards) await watchCount(each);
    await goTo(desk, "/station/vertical");
    const end = async () => {
      await browser.close();
      await callDoor(desk, "network.turnOff");
    };
    const table = await atStation(desk, "vertical");
    return await work({ tableId, port, table, devices, boards, bare, end });
  } finally {
    await browser.close();
  }
}

async function joinStations(desk: Page, browser: Browser, url: string): Promise<AtStation[]> {
  const all = devicesOfTest.flatMap(([test, station, count]) =>
    Array.from({ length: count }, (_none, nth) => ({ test, station, name: `${station} ${nth + 1}` })),
  );
  const joined: AtStation[] = [];
  for (const [index, { test, station, name }] of all.entries()) {
    const [width, height] = index % 2 === 0 ? ([360, 640] as const) : ([1024, 768] as const);
    const device = await openDevice(browser, width, height);
    await joinAs(desk, device, url, name, station);
    joined.push(await atStation(device.page, test));
  }
  return joined;
}

async function joinTelevisions(
  desk: Page,
  browser: Browser,
  url: string,
  names: readonly string[],
): Promise<Page[]> {
  const pages: Page[] = [];
  for (const name of names) {
    const television = await openDevice(browser, 1920, 1080);
    await joinAs(desk, television, url, name, "Big screen");
    await television.page.locator('html[data-theme="hall"][data-ready="true"]').waitFor();
    pages.push(television.page);
  }
  return pages;
}

async function goTo(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
}

async function atStation(page: Page, test: TestCode): Promise<AtStation> {
  // What follows gives up after five seconds, in which a busy machine may load no page.
  await page.getByRole("heading", { level: 1 }).first().waitFor();
  await keyFromPaper(page);
  await watchStation(page);
  return { page, test };
}
