import { describe, expect, test } from "vitest";
import type { Change, DayPlan, Span, StationLoad } from "../../../electron/domain/plan/told.ts";
import { frameOf, mostWaiting, queueTime } from "../../../renderer/screens/plan/told/busy.ts";
import { wavesOf } from "../../../renderer/screens/plan/told/waves.ts";
import {
  bestOfStations,
  isHelpedByRoom,
  roomsOf,
  worthOf,
} from "../../../renderer/screens/plan/told/worth.ts";
import type { WhatIf } from "../../../renderer/screens/plan/types.ts";

const agility: Change = { kind: "place", test: "agility" };
const leap: Change = { kind: "place", test: "vertical" };
const judge: Change = { kind: "judge" };

function whatIf(changes: readonly Change[], from: number, middle: number, until: number): WhatIf {
  return { changes, saved: { from: from * 60, middle: middle * 60, until: until * 60 } };
}

describe("what one more would bring", () => {
  // The independent hall of the design: 6 minutes, 0, and 45 together.
  const alone = [whatIf([agility], 3, 6, 9), whatIf([leap], 0, 0, 1)];
  const both = whatIf([agility, leap], 38, 45, 51);

  test("that which saves most comes first, and what saves nothing is no advice", () => {
    const { helps, nothing } = worthOf([...alone, both]);
    expect(helps.map(({ changes }) => changes)).toEqual([[agility, leap], [agility]]);
    expect(nothing.map(({ changes }) => changes)).toEqual([[leap]]);
  });

  test("a pair that does no more than one of the two alone is left out", () => {
    const idle = whatIf([agility, judge], 3, 7, 10);
    const { helps, nothing } = worthOf([...alone, whatIf([judge], 0, 0, 0), idle]);
    expect(helps.map(({ changes }) => changes)).toEqual([[agility]]);
    expect(nothing.map(({ changes }) => changes)).toEqual([[leap], [judge]]);
  });

  test("what may as well make the day longer is no advice, and a minute is none", () => {
    expect(worthOf([whatIf([agility], -20, 5, 30)]).helps).toEqual([]);
    expect(worthOf([whatIf([agility], 1, 1, 1)]).helps).toEqual([]);
    expect(worthOf([whatIf([agility], -2, 20, 30)]).helps).toHaveLength(1);
  });

  test("other times for the leagues help where waits fall by a minute, and where the day ends earlier", () => {
    const times = (wait: number, saved: number): WhatIf => ({
      ...whatIf([{ kind: "waves" }], saved, saved, saved),
      waves: { times: [{ league: "Gravel Moon", from: "09:20", until: "09:20" }], wait, waitAsGiven: 720 },
    });
    expect(worthOf([times(420, 0)]).helps).toHaveLength(1);
    expect(worthOf([times(720, 4)]).helps).toHaveLength(1);
    expect(worthOf([times(719, 0)])).toMatchObject({ helps: [], nothing: [{ saved: { middle: 0 } }] });
    // Where the day would end later no times are told.
    expect(worthOf([whatIf([{ kind: "waves" }], 0, 0, 0)]).helps).toEqual([]);
  });

  test("of a station at which neither a place nor a lane helps, room is said once", () => {
    const lane: Change = { kind: "lane", test: "vertical" };
    const nothing = [whatIf([leap], 0, 0, 0), whatIf([agility], 0, 0, 0), whatIf([lane], 0, 0, 0)];
    const { rooms, others } = roomsOf([...nothing, whatIf([judge], 0, 0, 0)]);
    expect(rooms).toEqual(["vertical"]);
    expect(others.map(({ changes }) => changes)).toEqual([[agility], [judge]]);
  });

  test("more room at a station is said to help only where it is listed as help", () => {
    expect(isHelpedByRoom("agility", [...alone, both])).toBe(true);
    expect(isHelpedByRoom("vertical", [...alone, both])).toBe(false);
  });

  test("whether a station gets a place or a lane comes second: the better of them is shown first", () => {
    const lane: Change = { kind: "lane", test: "vertical" };
    const helps = [both, whatIf([lane, agility], 30, 40, 50), whatIf([agility], 3, 6, 9)];
    expect(bestOfStations(helps)).toEqual([helps[0], helps[2]]);
  });

  test("changes are the same by what they say, not by which object says it", () => {
    const same = { test: "agility", kind: "place" } as const;
    expect(worthOf([...alone, whatIf([same, judge], 3, 6, 9)]).helps).toHaveLength(1);
  });
});

function load(waiting: readonly number[]): StationLoad {
  return { test: "core", step: 300, used: waiting.map(() => 0.5), waiting };
}

describe("a station over the day", () => {
  test("the longest queue is told, from the first to the last who waits", () => {
    const told = load([0, 2, 3, 0.4, 1, 4, 9, 2, 0]);
    expect(queueTime(told)).toEqual({ from: 4 * 300, until: 8 * 300 });
    expect(mostWaiting(told)).toBe(9);
  });

  test("a queue that lasts until the end ends there; one of five minutes is none", () => {
    expect(queueTime(load([0, 2, 2]))).toEqual({ from: 300, until: 900 });
    expect(queueTime(load([0, 3, 0]))).toBeNull();
    expect(mostWaiting(load([0, 0.3]))).toBe(0);
  });

  test("the axis has round times of the clock, also where the day begins at none, and breaks end with it", () => {
    const end: Span = { from: 7_000, middle: 7_200, until: 7_500 };
    const plan = { end, stations: [load([4, 7])] } as unknown as DayPlan;
    const breaks = [
      { from: -600, until: 600 },
      { from: 7_000, until: 9_999 },
      { from: 20_000, until: 30_000 },
    ];
    const frame = frameOf(plan, breaks, "2026-11-14T09:20");
    expect(frame.until).toBe(7_800);
    expect(frame.ticks).toEqual([600, 1500, 2400, 3300, 4200, 5100, 6000, 6900, 7800]);
    expect(frame.breaks).toEqual([
      { from: 0, until: 600 },
      { from: 7_000, until: 7_800 },
    ]);
    expect(frame.mostWaiting).toBe(7);
  });
});

test("waves stand in the order in which they come, each with its place among those of its league", () => {
  const span = { from: 0, middle: 0, until: 0 };
  const wave = (league: string, at: number) => ({
    league,
    at,
    athletes: [1],
    firstStart: span,
    lastDone: span,
  });
  const waves = [wave("Tin Harbour", 600), wave("Gravel Moon", 0), wave("Tin Harbour", 0)];
  expect(wavesOf({ waves }).map(({ key, at, places }) => [key, at, places])).toEqual([
    ["Gravel Moon 1", 0, 1],
    ["Tin Harbour 1", 0, 2],
    ["Tin Harbour 2", 600, 2],
  ]);
});
