import { expect, test } from "vitest";
import { type AskedQuery, isTouched } from "../../../renderer/app/topics.ts";

const view = (group: string, asked?: string): AskedQuery => ({ path: [group, "view"], test: asked });
const touched = (query: AskedQuery, topics: readonly string[], tests: readonly string[] | null = null) =>
  isTouched(query, { topics: new Set(topics), tests: tests === null ? null : new Set(tests) });

test("a change at named tests is read again at their stations and wherever no test is asked about", () => {
  const [topics, tests] = [
    ["attempts", "calls"],
    ["push-up", "agility"],
  ];
  expect(touched(view("station", "agility"), topics, tests)).toBe(true);
  expect(touched(view("heat", "core"), topics, tests)).toBe(false);
  expect(touched(view("station", "core"), topics, tests)).toBe(false);
  expect(touched(view("board"), topics, tests)).toBe(true);
  expect(touched({ path: ["day", "overview"], test: undefined }, topics, tests)).toBe(true);
  expect(touched({ path: ["station", "standing"], test: undefined }, topics, tests)).toBe(true);
});

test("a change that names no test is read again at every station", () => {
  expect(touched(view("station", "core"), ["calls"])).toBe(true);
  expect(touched(view("heat", "core"), ["heats"])).toBe(true);
});

test("the day's state and the hidden screen are read again when they change, and not at every result", () => {
  const [current, hidden] = [
    { path: ["day", "current"], test: undefined },
    { path: ["board", "hidden"], test: undefined },
  ];
  expect(
    [current, hidden].map((query) => touched(query, ["attempts", "calls", "entrants", "people"])),
  ).toEqual([false, false]);
  expect(touched(hidden, ["board"])).toBe(true);
  // What the day itself is about touches everything, and so does what nobody knows here.
  expect([current, hidden, view("station", "core")].map((query) => touched(query, ["day"], []))).toEqual([
    true,
    true,
    true,
  ]);
  expect(touched(current, ["all", "attempts"])).toBe(true);
});
