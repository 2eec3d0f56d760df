import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { newKey, readKey } from "../../electron/api/reference/signature.ts";
import { seededChance } from "../../electron/domain/chance.ts";
import type { ReleasedMark } from "../../electron/domain/privacy/rule.ts";
import { merge } from "../../electron/reference/merge.ts";
import { makeBundle, type Told } from "../unit/reference/making.ts";
import { groupsTold, marksIn, type PlainMark } from "./count-table.ts";

/**
 * What one liar can do among a hundred honest halls, against what three more or three fewer honest halls would change.
 * Honest halls test 30 to 60 people each, with results as they are to be expected; they differ by 0.25 standard deviations.
 * The liar sends 5,000 results that are the best ones there can be. Ours, no source.
 */
const random = seededChance([5, 0, 0, 17]);
const honest = 100;

function normal(): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Mean, standard deviation and step (grains) of each test's results, and what the liar says. */
const tests = [
  { test: "push-up", variant: "full", mean: 25, deviation: 8, step: 5, lie: 75 },
  { test: "core", variant: "", mean: 120, deviation: 45, step: 30, lie: 570 },
  { test: "vertical", variant: "", mean: 8000, deviation: 1400, step: 1000, lie: 14_000 },
] as const;
const people = [
  { category: "women", ageBand: "25 to 29" },
  { category: "women", ageBand: "30 to 34" },
  { category: "open", ageBand: "25 to 29" },
] as const;

/** Adds up equal results; fewer than five alike are never in a bundle, and go to their neighbours' side as an end does. */
function alike(
  values: readonly number[],
  one: (typeof tests)[number],
): { count: number; marks: ReleasedMark[] }[] {
  const rising = values.toSorted((a, b) => a - b);
  const parts: number[][] = [];
  for (const value of rising) {
    const low = Math.floor(value / one.step) * one.step;
    const last = parts.at(-1);
    const isNew =
      last === undefined || (last.length >= 5 && low > Math.floor((last.at(-1) ?? 0) / one.step) * one.step);
    if (isNew) parts.push([value]);
    else last.push(value);
  }
  const end = parts.at(-1);
  if (parts.length > 1 && (end?.length ?? 0) < 5) parts.at(-2)?.push(...(parts.pop() ?? []));
  const cut = (part: readonly number[] | undefined) => Math.floor((part?.[0] ?? 0) / one.step) * one.step;
  return parts.map((part, index) => {
    const low = index === 0 ? null : cut(part);
    const high = index === parts.length - 1 ? null : cut(parts[index + 1]);
    return { count: part.length, marks: [{ test: one.test, variant: one.variant, low, high }] };
  });
}

function honestHall(seed: number): Uint8Array {
  const off = 0.25 * normal();
  const size = 10 + Math.floor(random() * 11);
  const rows = people.flatMap((about) =>
    tests.flatMap((one): Told[] => {
      const results = Array.from({ length: size }, () =>
        Math.max(one.step, one.mean + one.deviation * (off + normal())),
      );
      const told = alike(results, one);
      return told.length < 2 ? [] : told.map((each) => ({ ...each, ...about }));
    }),
  );
  return makeBundle({ rows, seed }).bytes;
}

/** So many invented results in each test and of all kinds of people, `count` in all. */
function liar(count: number, seed: number): Uint8Array {
  const each = Math.floor(count / (people.length * tests.length));
  const rows = people.flatMap((about) =>
    tests.map(({ test: code, variant, lie, step }): Told => {
      return { count: each, marks: [{ test: code, variant, low: lie, high: lie + step }], ...about };
    }),
  );
  return makeBundle({ rows, seed }).bytes;
}

let folder = "";
let bundles: Uint8Array[] = [];
let lows: PlainMark[] = [];
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "hostile-"));
  bundles = Array.from({ length: honest + 3 }, (_none, index) => honestHall(index + 1));
  lows = bundles.slice(0, honest).flatMap((zip) => [...marksIn(zip, "")]);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const key = readKey(newKey());

/** The bounds of every percentile of a table made of these files, and the halls that the merge names. */
async function tableOf(name: string, files: ReadonlyMap<string, Uint8Array>) {
  for (const [file, bytes] of files) {
    const path = join(folder, name, file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, bytes);
  }
  if (key === undefined) throw new Error("No key was made.");
  const signing = { key, publisher: "The harbour table", made: "2026-11-30", validUntil: "2028-11-30" };
  const out = join(folder, `${name}.zip`);
  const wanted = { folder: join(folder, name), out, kept: null, signing, page: null };
  const { differing } = await merge(wanted, { keptBack: unexpected, progress: () => undefined });
  const bounds = new Map<string, number[]>();
  for (const { name: group, percentiles } of groupsTold(new Uint8Array(readFileSync(out)))) {
    const told = percentiles.map((each) => each.split(":")[1]?.split(",") ?? []);
    bounds.set(
      `${group} low`,
      told.map(([low = ""]) => (low === "" ? -Infinity : Number(low))),
    );
    bounds.set(
      `${group} high`,
      told.map(([, high = ""]) => (high === "" ? Infinity : Number(high))),
    );
  }
  return { bounds, named: [...new Set(differing.map((each) => each.name))] };
}

function unexpected(name: string): never {
  throw new Error(`${name} was kept back.`);
}

/**
 * The largest shift of any bound of any percentile, as a share in a hundred: a bound has moved by so many percentiles
 * along the first table as one has to go there, up or down, to reach it.
 */
function largestShift(one: ReadonlyMap<string, number[]>, two: ReadonlyMap<string, number[]>): number {
  expect([...two.keys()]).toEqual([...one.keys()]);
  const shifts = [...one].map(([name, before]) => {
    const after = two.get(name) ?? [];
    expect(after).toHaveLength(before.length);
    return shiftOf([-Infinity, ...before, lastOf(name)], [-Infinity, ...after, lastOf(name)]);
  });
  return 5 * Math.max(...shifts);
}

/** The hundredth percentile, which no table tells: the highest bound of any honest hall in a group. */
function lastOf(group: string): number {
  if (group.endsWith(" high")) return Infinity;
  const [code] = JSON.parse(group.slice(0, -" low".length)) as string[];
  return Math.max(...lows.filter(({ test: each }) => each === code).map(({ low }) => low));
}

function shiftOf(before: readonly number[], after: readonly number[]): number {
  const shifts = after.map((bound, place) => {
    let shift = 0;
    const at = (index: number) => before[Math.min(Math.max(index, 0), before.length - 1)] ?? Number.NaN;
    while (shift < before.length && !(at(place - shift) <= bound && bound <= at(place + shift))) shift += 1;
    return shift;
  });
  return Math.max(...shifts);
}

const named = (from: number, to: number) =>
  new Map(
    bundles.slice(from, to).map((bytes, index): [string, Uint8Array] => [`${from + index}.zip`, bytes]),
  );

test("5,000 results of one liar move no percentile further than three honest halls, and the liar is named", async () => {
  const plain = await tableOf("honest", named(0, honest));
  expect(plain.bounds.size).toBeGreaterThanOrEqual(2 * 3 * 6);

  // What three honest halls change: three more, and three fewer, of every part of the hundred.
  const others = [await tableOf("more", named(0, honest + 3))];
  for (const from of [0, 30, 60, 90]) {
    const left = new Map([...named(0, from), ...named(from + 3, honest)]);
    others.push(await tableOf(`without-${from}`, left));
  }
  const width = Math.max(...others.map(({ bounds }) => largestShift(plain.bounds, bounds)));

  const one = await tableOf("one", new Map([...named(0, honest), ["liar.zip", liar(5000, 999)]]));
  const split = Array.from({ length: 50 }, (_none, index): [string, Uint8Array] => [
    `liar/${index}.zip`,
    liar(100, 2000 + index),
  ]);
  const many = await tableOf("many", new Map([...named(0, honest), ...split]));
  const shifts = [one, many].map(({ bounds }) => largestShift(plain.bounds, bounds));
  console.log(
    `largest shift of a percentile: three honest halls ${width} of 100, one bundle of 5,000 ${shifts[0]}, 50 in a subfolder ${shifts[1]}`,
  );
  expect(one.named).toContain("liar.zip");
  expect(many.named).toContain("liar/");
  expect(Math.max(...shifts)).toBeLessThanOrEqual(width);
});
