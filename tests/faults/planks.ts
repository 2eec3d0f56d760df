import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import type { Browser, Page } from "@playwright/test";
import type { HeatView } from "../../electron/api/heat/schemas.ts";
import { ensureBuild } from "../../electron/runtime/build.ts";
import { projectFolder } from "../../electron/runtime/host.ts";
import { type Device, startChromium } from "../e2e/browsers.ts";
import { type FaultProxy, startFaultProxy } from "../e2e/fault-proxy.ts";
import { countedKeys, gather, type LiveHeat, setLanes } from "../e2e/live.ts";
import { freePort } from "../network/table.ts";
import { machineMs, offsetOfPage } from "./clock-measure.ts";
import { type Recorded, recordHeat } from "./plank-recorder.ts";
import { startTable } from "./table-process.ts";
import { joinedDevice, through } from "./trial-hall.ts";

/** How the network is dead: what is sent comes later, or never. */
export type Death = "none" | "held" | "silent";

/** When each lane comes down and when the network is dead, in ms from time 0. */
export interface PlankPlan {
  readonly stopsMs: readonly number[];
  readonly deadFromMs: number;
  readonly deadForMs: number;
}

/** A plank at a device: what was heard, shown and kept. */
export interface PlankRun {
  readonly death: Death;
  readonly plan: PlankPlan;
  readonly recorded: Recorded;
  /** Time 0 by the page. */
  readonly zeroAt: number;
  /** What the table has at the end: by lane the mark as it is written, and the ms held. */
  readonly marks: readonly string[];
  readonly heldMs: readonly number[];
  /** How many lanes the device showed as done by the end of the dead time. */
  readonly doneHere: number;
  /** From the end of the dead time, or the last stop if that is later, until the table had every tap. */
  readonly caughtUpMs: number;
}

const count = 3_000;
/** How long the last taps may take to the table on a busy machine, in ms. */
const longestMs = 120_000;

/** Runs a plank at one device each, at the same time: with a network that is fine, and with dead ones. */
export async function runPlanks(plan: PlankPlan, deaths: readonly Death[]): Promise<PlankRun[]> {
  await ensureBuild(console.log);
  const folder = await mkdtemp(join(tmpdir(), "tapeline-plank-"));
  const athletes = plan.stopsMs.length * deaths.length;
  const pages = join(projectFolder, "out", "renderer");
  const orders = { folder, pages, port: await freePort(), athletes, only: "core" as const };
  const table = await startTable(orders);
  /** One after the other: a code lets one device in. */
  let joined: Promise<unknown> = Promise.resolve();
  function letDeviceIn(browser: Browser): Promise<Device> {
    const device = joined.then(() => joinedDevice(browser, table, orders.port, "core"));
    joined = device.catch(() => undefined);
    return device;
  }
  try {
    return await Promise.all(deaths.map((death) => runPlank(orders.port, letDeviceIn, death, plan)));
  } finally {
    await table.kill();
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function runPlank(
  port: number,
  letDeviceIn: (browser: Browser) => Promise<Device>,
  death: Death,
  plan: PlankPlan,
): Promise<PlankRun> {
  const proxy = await startFaultProxy(await freePort(), port);
  const browser = await startChromium([through(proxy, port)]);
  try {
    const { page } = await letDeviceIn(browser);
    await page.addInitScript(recordHeat);
    await page.goto(`https://127.0.0.1:${port}/`);
    await page.getByRole("button", { name: /^Call the next/ }).waitFor();
    await setLanes(page, plan.stopsMs.length);
    await gather(page, countedKeys(page), plan.stopsMs.length);
    return await holdPlank(page, proxy, death, plan);
  } finally {
    await browser.close();
    await proxy.close();
  }
}

async function holdPlank(page: Page, proxy: FaultProxy, death: Death, plan: PlankPlan): Promise<PlankRun> {
  const { aheadMs } = await offsetOfPage(page);
  await page.keyboard.press("Space");
  const zeroAt = ((await recordedAt(page)).startedAt ?? Number.NaN) + count;
  const at = async (ms: number) => wait(Math.max(0, zeroAt + aheadMs + ms - machineMs()));
  const end = plan.deadFromMs + plan.deadForMs;
  async function beDead(): Promise<number> {
    await at(plan.deadFromMs);
    if (death === "held") proxy.set({ held: true });
    if (death === "silent") proxy.set({ silent: "both" });
    await at(end);
    const done = await page.locator('[data-lane][data-phase="done"]').count();
    proxy.set({});
    return done;
  }
  async function stop(): Promise<void> {
    for (const [index, stopMs] of plan.stopsMs.entries()) {
      await at(stopMs);
      await page.keyboard.press(`${index + 1}`);
    }
  }
  const [doneHere] = await Promise.all([beDead(), stop()]);
  const waitedFrom = Math.max(zeroAt + aheadMs + end, machineMs());
  const heat = await heatWithAll(page, plan.stopsMs.length);
  const caughtUpMs = Math.max(0, machineMs() - waitedFrom);
  return {
    ...{ death, plan, zeroAt, caughtUpMs, doneHere },
    recorded: await recordedAt(page),
    marks: heat.lane.map(({ told }) => told?.written.number ?? ""),
    heldMs: heldBy(heat),
  };
}

function recordedAt(page: Page): Promise<Recorded> {
  return page.evaluate(() => window.recorded ?? { startedAt: null, notes: [], shown: [] });
}

/** Asks the table, through the device's network, until it has so many stops and their marks. */
async function heatWithAll(page: Page, stops: number): Promise<LiveHeat> {
  const begun = machineMs();
  while (machineMs() - begun < longestMs) {
    const text = await page.evaluate(askForHeat);
    const heat = text === null ? null : ((JSON.parse(text).result.data as HeatView).heat as LiveHeat | null);
    const marked = heat?.lane.filter(({ told }) => told !== null).length;
    if (heat !== null && marked === stops && heldBy(heat).length === stops) return heat;
    await wait(100);
  }
  throw new Error("The table never had every stop.");
}

/** Null where no answer comes: a connection that died silently never ends by itself. */
async function askForHeat(): Promise<string | null> {
  const input = encodeURIComponent(JSON.stringify({ test: "core", lengths: "cm" }));
  try {
    const answer = await fetch(`/trpc/heat.view?input=${input}`, { signal: AbortSignal.timeout(2_000) });
    return await answer.text();
  } catch {
    return null;
  }
}

function heldBy({ events }: LiveHeat): number[] {
  return events.flatMap(({ kind, atMs }) => (kind === "stop" ? [atMs] : []));
}
