import type { CDPSession, Page } from "@playwright/test";
import { resize } from "../e2e/board-picture.ts";
import { pushUps, send, withBothWindows } from "./windows.ts";

/** How smoothly the board takes bests in, and what it holds after a long day. */
export interface BoardBench {
  readonly bests: number;
  readonly frames: number;
  /** Of the times from one frame to the next while bests come in, in ms. */
  readonly longestMs: number;
  readonly over50: number;
  readonly hours: number;
  readonly turns: number;
  readonly startBytes: number;
  readonly endBytes: number;
  readonly startNodes: number;
  readonly endNodes: number;
}

const hours = 4;
/** As long as a scene or a little less: no turn is jumped over. */
const stepMs = 5_000;
const bestEveryMs = 300_000;

/**
 * The real board at 1920×1080 with 200 athletes: 200 bests come in while it counts its frames; then its timers run
 * through four hours of rotation, with a best every five minutes, and what its page holds after a collection of what
 * is not needed is compared with the first quarter of an hour.
 */
export function boardBench(): Promise<BoardBench> {
  return withBothWindows(async (desk, board, ids) => {
    await resize(board, { width: 1920, height: 1080 });
    const half = ids.length / 2;
    return {
      ...(await frames(desk, board, ids.slice(0, half))),
      ...(await longDay(desk, board, ids.slice(half))),
    };
  });
}

/** Two bests of each athlete, one after another as fast as the desk answers. */
async function frames(
  desk: Page,
  board: Page,
  ids: readonly number[],
): Promise<Pick<BoardBench, "bests" | "frames" | "longestMs" | "over50">> {
  await board.evaluate(() => {
    const gaps: number[] = [];
    Object.assign(globalThis, { gaps });
    let last = performance.now();
    requestAnimationFrame(function next(now) {
      gaps.push(now - last);
      last = now;
      requestAnimationFrame(next);
    });
  });
  for (const athleteId of ids) await send(desk, best(athleteId));
  for (const athleteId of ids) await send(desk, quadrants(athleteId));
  await board.waitForTimeout(1_000);
  const gaps = await board.evaluate(() => Reflect.get(globalThis, "gaps") as number[]);
  return {
    bests: 2 * ids.length,
    frames: gaps.length,
    longestMs: Math.max(...gaps),
    over50: gaps.filter((gap) => gap > 50).length,
  };
}

/** Thirty push-ups against twenty from the spring. */
function best(athleteId: number): object {
  return pushUps(athleteId, 8);
}

function quadrants(athleteId: number): object {
  const attempts = (["cw", "ccw"] as const).map((direction) => ({
    id: crypto.randomUUID(),
    seen: { direction, laps: 7, extra: 2, touches: 0 },
  }));
  return { athleteId, test: "agility", variant: "", attempts };
}

interface Held {
  readonly bytes: number;
  readonly nodes: number;
}

/** What the page holds once everything that nobody needs is thrown away. */
async function held(tools: CDPSession): Promise<Held> {
  for (let round = 0; round < 3; round += 1) await tools.send("HeapProfiler.collectGarbage");
  const { metrics } = await tools.send("Performance.getMetrics");
  const of = (name: string) => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN;
  return { bytes: of("JSHeapUsedSize"), nodes: of("Nodes") };
}

async function longDay(
  desk: Page,
  board: Page,
  ids: readonly number[],
): Promise<Omit<BoardBench, "bests" | "frames" | "longestMs" | "over50">> {
  await board.clock.install();
  await board.reload();
  await board.waitForFunction(() => document.documentElement.dataset.ready === "true");
  const tools = await board.context().newCDPSession(board);
  await tools.send("Performance.enable");
  const waiting = [...ids];
  const warmMs = 15 * 60_000;
  let start: Held = { bytes: Number.NaN, nodes: Number.NaN };
  let turns = 0;
  let scene = "";
  for (let atMs = 0; atMs < warmMs + hours * 3_600_000; atMs += stepMs) {
    if (atMs === warmMs) start = await held(tools);
    const next = atMs % bestEveryMs === 0 ? waiting.shift() : undefined;
    if (next !== undefined) await send(desk, best(next));
    await board.clock.runFor(stepMs);
    const now = (await board.locator("section").first().getAttribute("aria-label")) ?? "";
    if (now !== scene) turns += 1;
    scene = now;
  }
  const end = await held(tools);
  return {
    ...{ hours, turns },
    ...{ startBytes: start.bytes, endBytes: end.bytes, startNodes: start.nodes, endNodes: end.nodes },
  };
}
