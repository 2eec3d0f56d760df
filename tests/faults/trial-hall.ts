import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import type { Browser, Page } from "@playwright/test";
import { build } from "vite";
import config from "../../electron.vite.config.ts";
import type { KeptEntry } from "../../renderer/app/kept-entries.ts";
import { type Device, openDevice, startChromium } from "../e2e/browsers.ts";
import { type FaultProxy, startFaultProxy } from "../e2e/fault-proxy.ts";
import { cookieOf, freePort, post } from "../network/table.ts";
import { createEntryMaker } from "./entry-maker.ts";
import { order } from "./orders.ts";
import { type KeptRows, startTable, type TableOrders, type TableProcess } from "./table-process.ts";

/** A table in another process, a device of each of four tests in Chromium, and the fault proxy between. */
export interface TrialHall {
  readonly orders: TableOrders;
  readonly proxy: FaultProxy;
  readonly devices: readonly Page[];
  /** The entries so far, in order. */
  readonly entered: KeptEntry[];
  table: TableProcess;
  /** Makes `count` entries, spread over all devices, so many ms apart. */
  enter(count: number, apartMs: number): Promise<void>;
  close(): Promise<void>;
}

/** Builds the page of a trial's device as the product's own pages are; returns its folder. */
export async function buildDevicePage(): Promise<string> {
  const outDir = await mkdtemp(join(tmpdir(), "tapeline-device-page-"));
  const root = join(import.meta.dirname, "device-page");
  const { renderer } = config;
  await build({
    ...{ ...renderer, configFile: false, logLevel: "error", root },
    build: {
      ...renderer?.build,
      outDir,
      emptyOutDir: true,
      rolldownOptions: { input: join(root, "index.html") },
    },
  });
  return outDir;
}

interface HallParts {
  readonly seed: number;
  readonly athletes: number;
  /** The test of each device; left out, one of each that is typed in. */
  readonly tests?: readonly string[];
  /** Of 100 entries, how many correct or take back an earlier one; left out, none. */
  readonly mends?: number;
}

/** Starts a hall whose devices have joined. */
export async function startHall(pages: string, parts: HallParts): Promise<TrialHall> {
  const { seed, athletes, tests = order.map(({ test }) => test), mends = 0 } = parts;
  const folder = await mkdtemp(join(tmpdir(), "tapeline-trial-"));
  const port = await freePort();
  const orders = { folder, pages, port, athletes };
  const table = await startTable(orders);
  const proxy = await startFaultProxy(await freePort(), port);
  const browser = await startChromium([through(proxy, port)]);
  const devices: Page[] = [];
  for (const test of tests)
    devices.push(await beginDevice(await joinedDevice(browser, table, port, test), port));
  const isThere = async (device: number, id: string) =>
    (await devices[device]?.evaluate(() => window.device?.acknowledged()))?.includes(id) === true;
  const maker = createEntryMaker({ seed, tests, mends, isThere });
  const entered: KeptEntry[] = [];
  const hall: TrialHall = {
    ...{ orders, table, proxy, devices, entered },
    async enter(count, apartMs) {
      const under: Promise<void>[] = [];
      for (let done = 0; done < count; done += 1) {
        const device = entered.length % devices.length;
        const item = await maker.next(device);
        entered.push(item);
        const page = devices[device];
        if (page !== undefined) under.push(page.evaluate((one) => window.device?.enter(one), item));
        if (apartMs > 0) await wait(apartMs);
      }
      await Promise.all(under);
    },
    async close() {
      await browser.close();
      await hall.table.kill();
      await proxy.close();
      await rm(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
  return hall;
}

/** The browser asks for the table's own address, and comes to what stands between. */
export function through(proxy: FaultProxy, port: number): string {
  return `--host-resolver-rules=MAP 127.0.0.1:${port} 127.0.0.1:${proxy.port}`;
}

/** Opens a device that the table has let in for one test; it shows nothing yet. */
export async function joinedDevice(
  browser: Browser,
  table: TableProcess,
  port: number,
  test: string,
): Promise<Device> {
  const device = await openDevice(browser, 1024, 768);
  const cookie = await letIn(table, port, test);
  const [name = "", value = ""] = cookie.split("=");
  const own = { secure: true, httpOnly: true, sameSite: "Strict", domain: "127.0.0.1", path: "/" } as const;
  await device.context.addCookies([{ name, value, ...own }]);
  return device;
}

/** Opens the page of the trials at a device, or another page of it. */
export async function beginDevice(
  { page, complaints }: Pick<Device, "page" | "complaints">,
  port: number,
): Promise<Page> {
  await page.goto(`https://127.0.0.1:${port}/`);
  await page
    .waitForFunction(() => window.device !== undefined)
    .catch((error: unknown) => {
      throw new Error(`A device did not begin: ${complaints.join("; ")}`, { cause: error });
    });
  return page;
}

/** Lets a device in for one test and returns its cookie. */
async function letIn(table: TableProcess, port: number, test: string): Promise<string> {
  const reached = { port, origin: `https://127.0.0.1:${port}` };
  const code = await table.ask<string>({ ask: "code" });
  const asked = await post(reached, "/join/ask", { code, name: test });
  const { ask } = JSON.parse(asked.text) as { ask: string };
  for (;;) {
    const heard = await post(reached, "/join/wait", { ask });
    if (heard.headers["set-cookie"] !== undefined) return cookieOf(heard);
    await wait(30);
  }
}

export interface Verdict {
  readonly acknowledged: number;
  /** Entered at a device, and not or not wholly in the store; or ended at a device, and standing there. */
  readonly lost: number;
  /** Rows beyond those entered. */
  readonly doubled: number;
  readonly refused: number;
  readonly seconds: number;
}

/** Waits until nothing waits at any device and the store has all, at most `limitMs`; then judges. */
export async function settle(
  hall: TrialHall,
  limitMs: number,
): Promise<Verdict & { readonly kept: KeptRows }> {
  const begun = performance.now();
  for (;;) {
    const counts = await Promise.all(
      hall.devices.map((page) => page.evaluate(() => window.device?.counts())),
    );
    const waiting = counts.reduce((sum, each) => sum + (each?.waiting ?? 1), 0);
    const kept = await hall.table.ask<KeptRows>({ ask: "rows" });
    const ids = new Set(kept.rows.map(({ id }) => id));
    const wanted = hall.entered.map((item) => attemptIdsOf(item));
    const ended = new Set(hall.entered.flatMap(endedBy));
    const standing = kept.rows.filter(({ id, stands }) => stands && ended.has(id)).length;
    const lost = wanted.filter((each) => each.some((id) => !ids.has(id))).length + standing;
    const ms = performance.now() - begun;
    if ((waiting === 0 && lost === 0) || ms > limitMs) {
      const acknowledged = await Promise.all(
        hall.devices.map((page) => page.evaluate(() => window.device?.acknowledged().length ?? 0)),
      );
      return {
        acknowledged: acknowledged.reduce((sum, each) => sum + each, 0),
        lost,
        doubled: kept.rows.length - wanted.flat().filter((id) => ids.has(id)).length,
        refused: counts.reduce((sum, each) => sum + (each?.refused ?? 0), 0),
        seconds: ms / 1_000,
        kept,
      };
    }
    await wait(100);
  }
}

/** What an entry takes back or corrects. */
function endedBy(item: KeptEntry): string[] {
  if (item.what === "void") return [item.input.attemptId];
  if (item.what === "read") return [];
  return item.entry.replaces === undefined ? [] : [item.entry.replaces.attemptId];
}

function attemptIdsOf(item: KeptEntry): string[] {
  return item.what === "enter" ? item.entry.attempts.map(({ id }) => id) : [];
}
