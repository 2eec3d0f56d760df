import { candidatesOf } from "../../electron/api/bundle/prepare.ts";
import { seededChance, shuffled } from "../../electron/domain/chance.ts";
import { ageBandOf, leagueSizeOf } from "../../electron/domain/privacy/quasi.ts";
import type { Candidate } from "../../electron/domain/privacy/rule.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { allDays } from "../../electron/store/tables/days.ts";
import { testDesk } from "../door/desk.ts";

const date = "2026-11-14";

/** Mean and spread of each test's marks, in its grains; invented. */
const marks: readonly { readonly test: TestCode; readonly mean: number; readonly spread: number }[] = [
  { test: "push-up", mean: 22, spread: 8 },
  { test: "agility", mean: 112, spread: 12 },
  { test: "vertical", mean: 7400, spread: 1200 },
  { test: "core", mean: 150, spread: 50 },
  { test: "endurance", mean: 380_000, spread: 45_000 },
];

/** An invented day: 12 to 120 athletes of one to six leagues, four in five of whom share. The same seed, the same day. */
function inventedDay(seed: number): Candidate[] {
  const random = seededChance([seed, 0x9e3779b9, 0x7f4a7c15, 0xf39cc060]);
  // The first numbers of near seeds are near to each other.
  for (let warm = 0; warm < 20; warm += 1) random();
  const count = 12 + Math.floor(random() * 109);
  const leagues = 1 + Math.floor(random() * 6);
  const sizes = Array.from({ length: leagues }, () => leagueSizeOf(8 + Math.floor(random() * 40)));
  return Array.from({ length: count }, (_none, athlete) => athlete).flatMap((athlete) => {
    const league = Math.floor(random() * leagues);
    const who = {
      // One in seven, and whoever comes where the seed says.
      hidden: (athlete + seed) % 7 === 0,
      ...{ athlete, league, leagueSize: sizes[league] ?? ("unknown" as const), quarter: "2026-Q4" },
      ageBand: ageBandOf(random() < 0.05 ? null : 1970 + Math.floor(normal(random, 25, 6)), date),
      category: pick(random, ["women", "women", "women", "women", "open", "open", "men", "unknown"] as const),
      consent: random() < 0.8 ? ("given" as const) : ("no-share" as const),
    };
    const form = normal(random, 0, 0.7);
    return marks.flatMap(({ test, mean, spread }): Candidate[] => {
      if (random() < 0.1) return [];
      const better = test === "endurance" ? -form : form;
      const value = Math.max(1, Math.round(mean + spread * (better + normal(random, 0, 0.7))));
      const variant = test !== "push-up" ? "" : random() < 0.2 ? "knee" : "full";
      const written = test === "endurance" ? Math.ceil(value / 100) * 100 : value;
      return [{ ...who, test, variant, mark: { state: "complete", value: written } }];
    });
  });
}

/** Near enough to a normal number: twelve uniform ones less six. */
function normal(random: () => number, mean: number, spread: number): number {
  return mean + spread * Array.from({ length: 12 }, random).reduce((sum, part) => sum + part, -6);
}

function pick<Value>(random: () => number, values: readonly [Value, ...Value[]]): Value {
  return shuffled(values, random)[0] ?? values[0];
}

export function inventedDays(count: number): Candidate[][] {
  return Array.from({ length: count }, (_none, at) => inventedDay(at + 1));
}

/** The demonstration's day, as far as it has come. */
export async function demoDay(): Promise<Candidate[]> {
  const { desk, as } = testDesk();
  await as("organiser").day.openDemo();
  const { db } = desk.store;
  return allDays(db)
    .slice(0, 1)
    .flatMap((day) => candidatesOf(db, day, "marks"));
}
