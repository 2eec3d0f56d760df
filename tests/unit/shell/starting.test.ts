import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type CheckStep, checkTimeLeft } from "../../../electron/domain/backups/check-time.ts";
import { createStarting, startingPage } from "../../../electron/shell/trouble/starting.ts";
import { speakIn } from "../../../electron/shell/words.ts";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  speakIn(() => "en");
});

const page = () => new Request("app://desk/");
const program = async () => new Response("the program");
const begin = () => createStarting({ bytes: 5e8, ms: () => 0 });

test("a start that is soon over shows the program alone", async () => {
  const starting = begin();
  const asked = starting.answer(page());
  expect(starting.hand(program)).toBe(false);
  expect(await (await asked).text()).toBe("the program");
});

test("one that takes longer says what is being checked, and then the program is told to take its place", async () => {
  const starting = begin();
  const asked = starting.answer(page());
  starting.tell({ step: "shape", done: 0, total: 1 });
  await vi.advanceTimersByTimeAsync(1_000);
  const text = await (await asked).text();
  expect(text).toContain("Tapeline is checking your data");
  expect(text).toMatch(/<li class="now" aria-current="step"><span>The data file is whole<\/span>/);
  expect(starting.hand(program)).toBe(true);
  expect(await (await starting.answer(page())).text()).toBe("the program");
});

test("nothing can be entered or read meanwhile, and the page has no script", async () => {
  const starting = begin();
  const entry = new Request("app://desk/trpc/station.enter", { method: "POST", body: "{}" });
  expect((await starting.answer(entry)).status).toBe(405);
  for (const path of ["/trpc/day.current", "/index.html", "/assets/boot.js"]) {
    expect([path, (await starting.answer(new Request(`app://desk${path}`))).status]).toEqual([path, 404]);
  }
  expect((await starting.answer(new Request("app://desk/refused.css"))).status).toBe(200);
  expect(startingPage(null, null)).not.toMatch(/<script|<form|<button/);
});

test.each([
  ["en", 500, "A few seconds left.", "12,345 of 1,000,000"],
  ["en", 31_000, "About 40 seconds left.", "12,345 of 1,000,000"],
  ["en", 61_000, "About 1 minute left.", "12,345 of 1,000,000"],
  ["es", 31_000, "Quedan unos 40 segundos.", "12.345 de 1.000.000"],
  ["es", 130_000, "Quedan alrededor de 2 minutos.", "12.345 de 1.000.000"],
] as const)("in %s, %i ms are said as %s", (language, ms, said, counted) => {
  speakIn(() => language);
  const text = startingPage({ step: "marks", done: 12_345, total: 1_000_000 }, ms);
  expect(text).toContain(said);
  expect(text).toContain(counted);
});

test("the time left follows from how fast the steps were so far", () => {
  const left = (at: CheckStep, begin: number, step: number) => checkTimeLeft(at, 1e8, { begin, step });
  // Half of the marks in ten seconds: ten more.
  expect(left({ step: "marks", done: 500, total: 1_000 }, 15_000, 10_000)).toBeCloseTo(10_000);
  const slow = left({ step: "shape", done: 0, total: 1 }, 2_000, 0) ?? 0;
  const fast = left({ step: "shape", done: 0, total: 1 }, 200, 0) ?? 0;
  expect(slow / fast).toBeCloseTo(10);
  expect(left({ step: "shape", done: 0, total: 1 }, 2_500, 500)).toBeCloseTo(slow - 500);
  expect(checkTimeLeft(null, 1e8, { begin: 0, step: 0 })).toBeNull();
});
