import { QueryClient, QueryObserver } from "@tanstack/react-query";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { followChanges } from "../../../renderer/app/feed.ts";

// Where a page is says what it is; the modules look as soon as they are loaded.
vi.hoisted(() => vi.stubGlobal("location", new URL("app://desk/")));

type Told = { readonly data: { readonly topics: readonly string[]; readonly tests?: readonly string[] } };

let tellChange: (topics: readonly string[], tests?: readonly string[]) => void;
let queries: QueryClient;
let stop: () => void;
let follow: (longestMs: number) => () => void;

/** What is changed at the desk, and what the window was given of it; reading takes 30 ms. */
let changed: number;
let given: number[];
let readings: number;

beforeEach(() => {
  vi.useFakeTimers();
  [changed, given, readings] = [0, [], 0];
  queries = new QueryClient({ defaultOptions: { queries: { retry: false, networkMode: "always" } } });
  const subscribe = (_input: undefined, { onData }: { onData(told: Told): void }) => {
    tellChange = (topics, tests) => onData({ data: { topics, ...(tests !== undefined && { tests }) } });
    return { unsubscribe() {} };
  };
  follow = (longestMs) => {
    const from = { changes: { subscribe } } as unknown as Parameters<typeof followChanges>[0];
    return followChanges(from, queries, () => false, longestMs);
  };
  stop = follow(2_000);
});

afterEach(() => {
  stop();
  queries.clear();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

async function showBoard(readMs: number): Promise<void> {
  const board = new QueryObserver(queries, {
    queryKey: [["board", "view"]],
    async queryFn() {
      readings += 1;
      const seen = changed;
      await new Promise((resolve) => setTimeout(resolve, readMs));
      return seen;
    },
  });
  board.subscribe(({ data }) => {
    if (data !== undefined && data !== given.at(-1)) given.push(data);
  });
  await vi.advanceTimersByTimeAsync(readMs);
  given = [];
  readings = 0;
}

async function change(times: number, everyMs: number): Promise<void> {
  for (let count = 0; count < times; count += 1) {
    changed += 1;
    tellChange(["attempts"]);
    await vi.advanceTimersByTimeAsync(everyMs);
  }
}

test("a window goes on showing while changes come faster than they can be read", async () => {
  await showBoard(30);
  await change(100, 10);
  expect(given.length).toBeGreaterThan(20);
  // Nor is it read once for each change.
  expect(readings).toBeLessThan(40);
});

test("a device whose network takes three seconds goes on showing while the hall changes each second", async () => {
  stop();
  stop = follow(10_000);
  await showBoard(3_000);
  await change(30, 1_000);
  expect(given.length).toBeGreaterThan(7);
});

test("the last change is always read, also when it comes while an earlier one is being read", async () => {
  await showBoard(30);
  for (const everyMs of [1, 7, 16, 29, 31]) {
    await change(10, everyMs);
    await vi.advanceTimersByTimeAsync(100);
    expect(given.at(-1)).toBe(changed);
  }
});

test("a window behind another, which is given no frames, goes on reading", async () => {
  vi.stubGlobal("requestAnimationFrame", () => 1);
  vi.stubGlobal("cancelAnimationFrame", () => undefined);
  await showBoard(30);
  await change(5, 1_000);
  expect(given.at(-1)).toBe(5);
});

test("a change alone is read at once", async () => {
  await showBoard(30);
  tellChange(["attempts"]);
  expect(readings).toBe(1);
});

test("a reading that never ends holds up no later one", async () => {
  await showBoard(1e9 - 1);
  await change(1, 0);
  expect(readings).toBe(1);
  await change(1, 3_000);
  expect(readings).toBe(2);
});

/** Shows the station of a test as its screens do, by the client's kind of key or by our own; counts its readings. */
function showStation(test: string, key: "client's" | "own"): () => number {
  let count = 0;
  const queryKey = key === "own" ? [["heat", "view"], { test }] : [["station", "view"], { input: { test } }];
  const queryFn = async () => (count += 1);
  new QueryObserver(queries, { queryKey, queryFn }).subscribe(() => {});
  return () => count;
}

test("a station is read again at a change of its own, and not at one that names others", async () => {
  const [core, agility] = [showStation("core", "client's"), showStation("agility", "own")];
  await vi.advanceTimersByTimeAsync(50);
  tellChange(["attempts", "calls"], ["push-up", "agility"]);
  await vi.advanceTimersByTimeAsync(50);
  expect([core(), agility()]).toEqual([1, 2]);
  tellChange(["attempts", "calls"]);
  await vi.advanceTimersByTimeAsync(50);
  expect([core(), agility()]).toEqual([2, 3]);
});

test("changes that are read together touch the stations of each of them", async () => {
  await showBoard(30);
  const [core, power] = [showStation("core", "client's"), showStation("vertical", "own")];
  await vi.advanceTimersByTimeAsync(50);
  tellChange(["attempts"], ["push-up"]);
  // While the first is read.
  tellChange(["attempts"], ["vertical", "core"]);
  tellChange(["attempts"], ["endurance"]);
  await vi.advanceTimersByTimeAsync(200);
  expect([core(), power()]).toEqual([2, 2]);
  tellChange(["attempts"], ["push-up"]);
  tellChange(["calls"]);
  await vi.advanceTimersByTimeAsync(200);
  expect([core(), power()]).toEqual([3, 3]);
});
