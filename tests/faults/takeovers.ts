import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import type { Browser, Page } from "@playwright/test";
import { countInMs } from "../../electron/domain/heats/fold.ts";
import { defaultParameters } from "../../electron/domain/tests/registry.ts";
import { startChromium } from "../e2e/browsers.ts";
import { type FaultProxy, startFaultProxy } from "../e2e/fault-proxy.ts";
import { freePort } from "../network/table.ts";
import { machineMs, offsetOfPage, type PageOffset } from "./clock-measure.ts";
import type { SeenHeat } from "./device-page/station.ts";
import { chanceOf, oneOf } from "./orders.ts";
import { startTable, type TableProcess } from "./table-process.ts";
import { beginDevice, joinedDevice, through } from "./trial-hall.ts";

/** The test whose heats are taken over: it has a beat, and everybody's first test is it. */
const test = "push-up" as const;
const countIn = countInMs(test, defaultParameters(test));

/** What the network does to the start: nothing, or it is held up, or it or its answer is lost and it goes again. */
const mishaps = ["none", "none", "held", "held", "lost", "unanswered"] as const;

/** One heat that was started at a device and seen by a later page of it. All in ms. */
export interface Takeover {
  /** What the proxy delayed each piece by, on the way to the table and back. */
  readonly there: number;
  readonly back: number;
  readonly mishap: (typeof mishaps)[number];
  /** How long the start was kept from the table beyond that. */
  readonly keptMs: number;
  /** How much later than the tap the table has the start; what it says that may be; by how much this measuring may err. */
  readonly startErrorMs: number;
  readonly startDoubtMs: number | null;
  readonly startMeasuredToMs: number;
  /** How far the second screen's clock is off the table's, and half the round trip that it has measured. */
  readonly secondErrorMs: number;
  readonly halfTripMs: number;
  readonly secondMeasuredToMs: number;
  /** The same of one look by `heat.clock` alone: how far it is off the table's, and half its round trip. */
  readonly lookErrorMs: number;
  readonly lookHalfTripMs: number;
  /** How far it is off the tap, which is what people hear; how far it may be off, and whether the screen says so. */
  readonly fromTapMs: number;
  readonly doubtMs: number;
  readonly told: string;
  /** By how much the clock of the device that was tapped has moved since. */
  readonly movedMs: number;
}

/** One device, its two pages, and what stands between them and the table. */
interface Lane {
  readonly athleteId: number;
  readonly proxy: FaultProxy;
  readonly browser: Browser;
  readonly first: Page;
  readonly second: Page;
  readonly firstOffset: PageOffset;
  readonly secondOffset: PageOffset;
}

interface TakeoverOrders {
  readonly pages: string;
  readonly count: number;
  readonly seed: number;
  /** How many are tried at the same time. */
  readonly lanes: number;
  readonly network: TakeoverNetwork;
}

/** `hall`: most delays are short, and some are over a second each way. `quick`: under 45 ms there and back together. */
export type TakeoverNetwork = keyof typeof delaysOf;

/** Tries takeovers at one table that runs in a process of its own. */
export async function tryTakeovers(given: TakeoverOrders): Promise<Takeover[]> {
  const { pages, count, seed, lanes, network } = given;
  const folder = await mkdtemp(join(tmpdir(), "tapeline-takeover-"));
  const orders = { folder, pages, port: await freePort(), athletes: lanes };
  const table = await startTable(orders);
  const opened: Lane[] = [];
  const chance = chanceOf(seed);
  const done: Takeover[] = [];
  let left = count;
  async function run(lane: Lane): Promise<void> {
    await lane.first.evaluate((own) => window.device?.station.show(own), test);
    while (left > 0) {
      left -= 1;
      done.push(await takeOver(table, lane, chance, delaysOf[network](chance)));
    }
  }
  try {
    for (let each = 1; each <= lanes; each += 1) opened.push(await openLane(table, orders.port, each));
    await Promise.all(opened.map(run));
    return done;
  } finally {
    for (const { browser } of opened) await browser.close();
    await table.kill();
    for (const { proxy } of opened) await proxy.close();
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function openLane(table: TableProcess, port: number, athleteId: number): Promise<Lane> {
  const proxy = await startFaultProxy(await freePort(), port);
  const browser = await startChromium([through(proxy, port)]);
  const device = await joinedDevice(browser, table, port, test);
  const first = await beginDevice(device, port);
  // What a device shows after it was opened anew, on the same or on other hardware with its cookie, knows as little.
  const second = await beginDevice({ ...device, page: await device.context.newPage() }, port);
  const firstOffset = await offsetOfPage(first);
  return {
    ...{ athleteId, proxy, browser, first, second, firstOffset },
    secondOffset: await offsetOfPage(second),
  };
}

async function takeOver(
  table: TableProcess,
  lane: Lane,
  chance: () => number,
  delays: Delays,
): Promise<Takeover> {
  const { proxy, first, second } = lane;
  const network = { delayMs: { asks: delays.there, answers: delays.back } };
  proxy.set(network);
  await first.evaluate(([own, id]) => window.device?.station.place(own, id), [test, lane.athleteId] as const);
  await heatThat(first, "gathering");
  // People take some seconds from the call to the start.
  await wait(300 + chance() * 3_000);
  const mishap = oneOf(chance, mishaps) ?? "none";
  const keptMs = mishap === "none" ? 0 : 200 + chance() * 3_800;
  const tappedAt = await startUnder(lane, network, mishap, keptMs);
  const began = await heatAt(first);
  const heatId = began?.heatId ?? "";
  const zero = await until(() => table.ask<number | null>({ ask: "zero", heatId }));
  await second.evaluate((own) => window.device?.station.show(own), test);
  await heatThat(second, "running");
  // Its looks at the table's clock are over then, and what it says about them is on the screen.
  await wait(3_000 + 2 * (delays.there + delays.back));
  const seen = await heatThat(second, "running");
  const later = await heatThat(first, "running");
  const look = await second.evaluate(() => window.device?.station.look());
  proxy.set({});
  await first.evaluate(() => window.device?.station.callOff());
  await second.evaluate(() => window.device?.station.hide());
  const trueZero = tappedAt + countIn + lane.firstOffset.aheadMs;
  const secondZero = (seen.zeroAt ?? Number.NaN) + lane.secondOffset.aheadMs;
  return {
    ...{ ...delays, mishap, keptMs, told: seen.told, doubtMs: seen.doubtMs },
    startErrorMs: zero - trueZero,
    startDoubtMs: seen.startDoubtMs,
    startMeasuredToMs: lane.firstOffset.doubtMs,
    secondErrorMs: secondZero - zero,
    halfTripMs: seen.doubtMs - (seen.startDoubtMs ?? 0),
    secondMeasuredToMs: lane.secondOffset.doubtMs,
    lookErrorMs: (look?.zeroAt ?? Number.NaN) + lane.secondOffset.aheadMs - zero,
    lookHalfTripMs: look?.doubtMs ?? Number.NaN,
    fromTapMs: secondZero - trueZero,
    movedMs: (later.zeroAt ?? Number.NaN) - (began?.zeroAt ?? Number.NaN),
  };
}

/** What the proxy delays each piece by, on the way to the table and back, in ms. */
interface Delays {
  readonly there: number;
  readonly back: number;
}

const delaysOf = {
  hall: (chance: () => number): Delays => ({ there: delayOf(chance), back: delayOf(chance) }),
  quick(chance: () => number): Delays {
    const both = Math.floor(chance() * 45);
    const there = Math.round(chance() * both);
    return { there, back: both - there };
  },
} as const;

/** Most delays of a hall are short, and some are over a second. */
function delayOf(chance: () => number): number {
  return Math.floor(chance() ** 3 * 1_200);
}

/** Taps the start while the network does this to it; returns when it was tapped, by the page. */
async function startUnder(
  { proxy, first }: Lane,
  network: Parameters<FaultProxy["set"]>[0],
  mishap: Takeover["mishap"],
  keptMs: number,
): Promise<number> {
  if (mishap === "held") proxy.set({ held: true });
  if (mishap === "lost") proxy.set({ silent: "both" });
  if (mishap === "unanswered") proxy.set({ ...network, silent: "answers" });
  const tappedAt = await first.evaluate(() => window.device?.station.start() ?? Number.NaN);
  await wait(keptMs);
  proxy.set(network);
  if (mishap === "lost" || mishap === "unanswered") proxy.cut();
  return tappedAt;
}

function heatAt(page: Page): Promise<SeenHeat | null> {
  return page.evaluate(() => window.device?.station.heat() ?? null);
}

function heatThat(page: Page, state: SeenHeat["state"]): Promise<SeenHeat> {
  return until(
    () => heatAt(page),
    (heat) => heat.state === state,
  );
}

/** How long something may take on a busy machine, in ms. */
const longestMs = 120_000;

/** Asks until there is an answer that is good, or for too long. */
async function until<Answer>(
  ask: () => Promise<Answer | null>,
  isGood: (answer: Answer) => boolean = () => true,
): Promise<Answer> {
  const begun = machineMs();
  for (;;) {
    const answer = await ask();
    if (answer !== null && isGood(answer)) return answer;
    if (machineMs() - begun > longestMs)
      throw new Error(`What is waited for does not come, only ${JSON.stringify(answer)}`);
    await wait(25);
  }
}
