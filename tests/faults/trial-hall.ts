import { randomUUID } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import type { Page } from "@playwright/test";
import { build } from "vite";
import config from "../../electron.vite.config.ts";
import type { KeptEntry } from "../../renderer/app/kept-entries.ts";
import { openDevice, startChromium } from "../e2e/browsers.ts";
import { type FaultProxy, startFaultProxy } from "../e2e/fault-proxy.ts";
import { cookieOf, freePort, post } from "../network/table.ts";
import { chanceOf, newEntry, order } from "./orders.ts";
import { type KeptRows, startTable, type TableOrders, type TableProcess } from "./table-process.ts";

/** A table in another process, a device of each of four tests in Chromium, and the fault proxy between. */
export interface TrialHall {
  readonly orders: TableOrders;
  readonly proxy: FaultProxy;
  readonly devices: readonly Page[];
  /** The entries so far, in order. */
  readonly entered: KeptEntry[];
  table: TableProcess;
  /** Enters `count` results, each athlete one, spread over all devices, so many ms apart. */
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

/** Starts a hall whose devices have joined. */
export async function startHall(pages: string, seed: number, athletes: number): Promise<TrialHall> {
  const folder = await mkdtemp(join(tmpdir(), "tapeline-trial-"));
  const port = await freePort();
  const orders = { folder, pages, port, athletes };
  const table = await startTable(orders);
  const proxy = await startFaultProxy(await freePort(), port);
  const map = `--host-resolver-rules=MAP 127.0.0.1:${port} 127.0.0.1:${proxy.port}`;
  const browser = await startChromium([map]);
  const devices: Page[] = [];
  for (const { test } of order) {
    const { page, context, complaints } = await openDevice(browser, 360, 640);
    const cookie = await letIn(table, port, test);
    const [name = "", value = ""] = cookie.split("=");
    const own = { secure: true, httpOnly: true, sameSite: "Strict", domain: "127.0.0.1", path: "/" } as const;
    await context.addCookies([{ name, value, ...own }]);
    await page.goto(`https://127.0.0.1:${port}/`);
    await page
      .waitForFunction(() => window.device !== undefined)
      .catch((error: unknown) => {
        throw new Error(`A device did not begin: ${complaints.join("; ")}`, { cause: error });
      });
    devices.push(page);
  }
  const chance = chanceOf(seed);
  const entered: KeptEntry[] = [];
  const hall: TrialHall = {
    ...{ orders, table, proxy, devices, entered },
    async enter(count, apartMs) {
      const under: Promise<void>[] = [];
      for (let done = 0; done < count; done += 1) {
        const step = entered.length % order.length;
        const bib = entered.length + 1;
        const item: KeptEntry = {
          what: "enter",
          id: randomUUID(),
          bib,
          entry: newEntry(chance, bib, step) as never,
        };
        entered.push(item);
        const page = devices[step];
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
  /** Entered at a device, and not or not wholly in the store. */
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
    const lost = wanted.filter((each) => each.some((id) => !ids.has(id))).length;
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

function attemptIdsOf(item: KeptEntry): string[] {
  return item.what === "enter" ? item.entry.attempts.map(({ id }) => id) : [];
}
