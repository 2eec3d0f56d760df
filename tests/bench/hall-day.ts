import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { boardDay } from "../door/board-day.ts";
import { crowd } from "../door/crowd.ts";

export const athletes = 300;
/** How many devices each station has, in the order of the tests. */
export const devicesOfTest: readonly (readonly [TestCode, station: string, devices: number])[] = [
  ["push-up", "Strength", 3],
  ["agility", "Agility", 3],
  ["vertical", "Power", 2],
  ["core", "Core", 2],
  ["endurance", "Endurance", 2],
];

/** One entry as it is typed: a bib, and what goes into which field. */
export interface TypedEntry {
  readonly bib: number;
  /** Label's beginning and text, in Enter's order. */
  readonly fields: readonly (readonly [label: string, typed: string])[];
}

/** What a device enters, in its order. */
export interface Turn extends TypedEntry {
  readonly device: number;
}

/** Everybody checked in, a mark from the spring each in push-ups, so that some results are bests and some are not. */
export async function makeHallDay(file: string): Promise<{ readonly dayId: number }> {
  const day = await boardDay(crowd(athletes), file);
  for (let bib = 1; bib <= athletes; bib += 1) day.past(bib, "push-up", 20);
  day.desk.close();
  return day;
}

/**
 * A day's entries in the order in which they come: everybody goes from station to station, and after the first fifth all
 * five stations enter at once. A quadrant jump is two entries, a direction each.
 * @param results how many results; five of each athlete
 */
export function turnsOf(results: number): Turn[] {
  const entered = Math.ceil(results / devicesOfTest.length);
  const behind = Math.ceil(entered / devicesOfTest.length);
  const rounds = entered + behind * (devicesOfTest.length - 1);
  return Array.from({ length: rounds }, (_none, round) => round).flatMap((round) =>
    devicesOfTest.flatMap(([test], place) => {
      const bib = round - place * behind + 1;
      if (bib < 1 || bib > entered) return [];
      return typedFor(test, bib).map((fields) => ({ bib, fields, device: deviceFor(place, bib) }));
    }),
  );
}

function deviceFor(place: number, bib: number): number {
  const counts = devicesOfTest.map(([, , count]) => count);
  const before = counts.slice(0, place).reduce((sum, count) => sum + count, 0);
  return before + (bib % (counts[place] ?? 1));
}

/** Plain values about which nothing is asked. */
function typedFor(test: TestCode, bib: number): TypedEntry["fields"][] {
  switch (test) {
    case "push-up":
      return [
        [
          ["Top beats in total", `${17 + (bib % 9)}`],
          ["Missed reps", "0"],
        ],
      ];
    case "agility":
      return [0, 1].map((direction) => [
        ["Full laps", "6"],
        ["Extra", `${(bib + direction) % 4}`],
        ["Line touches", "0"],
      ]);
    case "vertical":
      return [leapOf(bib)];
    case "core":
      return [[["Time", `1:${20 + (bib % 30)}`]]];
    case "endurance":
      return [[["Time", `6:${10 + (bib % 40)}`]]];
  }
}

/** A leap, in cm. The table's have another reach than the devices', so that no two of an athlete are alike. */
export function leapOf(bib: number, reach: "210" | "211" = "210"): TypedEntry["fields"] {
  return [
    ["Standing reach", reach],
    ["Touch 1", `${249 + (bib % 6)}`],
  ];
}
