import { expect, test } from "vitest";
import { seededChance } from "../../../electron/domain/chance.ts";
import { cyclesOf } from "../../../electron/domain/plan/cycles.ts";
import { drawNormal } from "../../../electron/domain/plan/draws.ts";
import { meanCycle } from "../../../electron/domain/plan/expected.ts";
import type { DoneTurn, Hall, Moment, Station } from "../../../electron/domain/plan/hall.ts";
import { knownFrom, withKnown } from "../../../electron/domain/plan/known.ts";
import { paceOf } from "../../../electron/domain/plan/pace.ts";
import { withUnseen } from "../../../electron/domain/plan/unseen.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { athletesOf, hallOf, still } from "./halls.ts";

function turn(
  athlete: number,
  code: TestCode,
  until: number,
  from: number | null = null,
  heat: string | null = null,
) {
  return { athlete, test: code, from, until, heat };
}

/** A keyed agility station with one place at which turn and change-over take 150 s, after push-ups that ended long ago. */
const agility = still("agility", 120, { changeOver: { median: 30, sigma: 0 } });
const hall = hallOf([still("push-up", 60), agility], { rest: 300 });

/** Ends at a place that is never idle, each so many seconds after the one before; all did push-ups long ago. */
function keyed(gaps: readonly number[], test: TestCode = "agility"): DoneTurn[] {
  let now = -gaps.reduce((sum, gap) => sum + gap, 0);
  const ends = gaps.map((gap) => {
    now += gap;
    return now;
  });
  const before = ends.map((_end, athlete) => turn(athlete, "push-up", -500_000));
  return [...before, ...ends.map((end, athlete) => turn(athlete, test, end))];
}

function momentOf(done: readonly DoneTurn[], at: Hall = hall): Moment {
  return { hall: at, athletes: athletesOf(5, ["endurance"]), running: [], done };
}

/** Nothing is believed of a pace but that it may be a quarter more or less. */
const open = { mean: 0, doubt: 0.25 };

function tookAt(done: readonly DoneTurn[], at: Hall, station: number): number[] {
  return cyclesOf({ hall: at, done, arrived: new Map() })
    .filter((cycle) => cycle.station === station)
    .map(({ took }) => took);
}

test("of keyed turns, the time from one end to the next is a turn and a change-over", () => {
  expect(tookAt(keyed([150, 140, 170]), hall, 1)).toEqual([140, 170]);
});

test("time without anybody rested is nobody's", () => {
  const done = [
    turn(1, "push-up", -500_000),
    turn(2, "push-up", -1000),
    turn(1, "agility", -5000),
    turn(2, "agility", -550),
  ];
  // The second was rested at -700 and done 150 s later, though the place was free for more than an hour.
  expect(tookAt(done, hall, 1).at(-1)).toBe(150);
});

test("with two places a turn could begin when the one before the last was over", () => {
  const two = hallOf([still("push-up", 60), { ...agility, places: 2 }], { rest: 300 });
  expect(tookAt(keyed([80, 70, 75, 75]), two, 1)).toEqual([145, 150]);
});

test("a break of the hall is no part of a turn", () => {
  const paused = { ...hall, breaks: [{ from: -160, until: -60 }] };
  expect(tookAt(keyed([150, 250]), paused, 1).at(-1)).toBe(150);
});

/** A plank station with four lanes, keyed: those who end close together were one heat. */
const core = still("core", 120, { lanes: 4, changeOver: { median: 60, sigma: 0 } });
const plankHall = hallOf([still("push-up", 60), { ...core, turn: { median: 120, sigma: 0.4 } }], {
  rest: 300,
});

test("keyed ends that are closer than a change-over and a short turn are one heat", () => {
  const done = keyed([500, 30, 45, 150, 20, 40], "core");
  const cycles = cyclesOf({ hall: plankHall, done, arrived: new Map() }).filter(
    ({ station }) => station === 1,
  );
  // The first one tells nothing: nobody knows when the station was opened.
  expect(cycles.map(({ athletes }) => athletes)).toEqual([[3, 4, 5]]);
  expect(cycles[0]?.took).toBe(210);
});

test("no heat has more athletes than lanes, and nobody is in one who was not rested when it began", () => {
  const full = cyclesOf({
    hall: plankHall,
    done: keyed([500, 200, 10, 10, 10, 10], "core"),
    arrived: new Map(),
  });
  expect(Math.max(...full.map(({ athletes }) => athletes.length))).toBe(4);
  const late = [
    ...[turn(0, "push-up", -500_000), turn(1, "push-up", -500_000), turn(2, "push-up", -370)],
    ...[turn(0, "core", -900), turn(1, "core", -60), turn(2, "core", -20)],
  ];
  const apart = cyclesOf({ hall: plankHall, done: late, arrived: new Map() }).filter(
    ({ station }) => station === 1,
  );
  expect(apart.map(({ athletes }) => athletes)).toEqual([[1], [2]]);
});

test("a heat tells who was in it, however far apart they ended", () => {
  const done = [
    turn(1, "push-up", -500_000),
    turn(2, "push-up", -500_000),
    turn(1, "core", -400, -500, "one"),
    turn(2, "core", -150, -500, "one"),
  ];
  const cycles = cyclesOf({ hall: plankHall, done, arrived: new Map() }).filter(
    ({ station }) => station === 1,
  );
  expect(cycles.map(({ athletes }) => athletes)).toEqual([[1, 2]]);
});

test("paper that was keyed without a time moves no pace, of its own station or of the next", () => {
  // Agility went on paper: nothing of it is done, and nobody knows since when anybody could have gone on to the leap.
  const three = hallOf([still("push-up", 60), agility, still("vertical", 100)], { rest: 300 });
  const done = keyed([600, 600, 600, 600], "vertical");
  const pace = paceOf(momentOf(done, three), three, [open, open, open]);
  expect([...pace.mean]).toEqual([0, 0, 0]);
});

test("today's pace is followed the more, the more turns there are", () => {
  const factor = (turns: number) => {
    const pace = paceOf(momentOf(keyed(Array.from({ length: turns }, () => 225))), hall, [open, open]);
    return Math.exp(pace.mean[1] ?? 0);
  };
  // Each took one and a half times as long.
  expect(factor(2)).toBeGreaterThan(1.1);
  expect(factor(2)).toBeLessThan(factor(30));
  expect(factor(30)).toBeGreaterThan(1.4);
  expect(factor(30)).toBeLessThan(1.5);
});

test("a slow station makes one expect the others to be a little slow, too", () => {
  const pace = paceOf(momentOf(keyed(Array.from({ length: 30 }, () => 225))), hall, [open, open]);
  expect(Math.exp(pace.mean[0] ?? 0)).toBeGreaterThan(1.02);
  expect(Math.exp(pace.mean[0] ?? 0)).toBeLessThan(1.15);
});

test("a pace that changes is followed calmly: an hour of slower turns moves it most of the way, ten minutes a little", () => {
  const after = (slow: number) => {
    const gaps = [...Array.from({ length: 40 }, () => 150), ...Array.from({ length: slow }, () => 225)];
    return Math.exp(paceOf(momentOf(keyed(gaps)), hall, [open, open]).mean[1] ?? 0);
  };
  expect(after(0)).toBeCloseTo(1, 1);
  expect(after(3)).toBeLessThan(1.12);
  expect(after(16)).toBeGreaterThan(1.2);
});

test("one very long turn is a pause, and counts for three turns at most", () => {
  const gaps = Array.from({ length: 20 }, (_none, index) => (index === 10 ? 7200 : 150));
  const pace = paceOf(momentOf(keyed(gaps)), hall, [open, open]);
  expect(Math.exp(pace.mean[1] ?? 0)).toBeLessThan(1.2);
});

test("earlier days tell a station's times within a twentieth, from keyed ends alone", () => {
  const random = seededChance([1, 2, 3, 4]);
  const gaps = Array.from({ length: 400 }, () => 195 * Math.exp(0.3 * drawNormal(() => random()) - 0.045));
  const [known] = knownFrom([{ hall, done: keyed(gaps), arrived: new Map() }]).filter(
    ({ test: code }) => code === "agility",
  );
  // Turn and change-over are told as 1.3 times the assumed 150 s together.
  expect((known?.turn.median ?? 0) + (known?.changeOver.median ?? 0)).toBeGreaterThan(195 * 0.95);
  expect((known?.turn.median ?? 0) + (known?.changeOver.median ?? 0)).toBeLessThan(195 * 1.05);
  expect(known?.turn.sigma).toBeGreaterThan(0.25);
  expect(known?.turn.sigma).toBeLessThan(0.35);
});

test("an assumption gives way to a hall's own turns, and doubt with it", () => {
  const own = (turns: number) => ({
    ...{ test: "agility" as const, turns, turn: { median: 240, sigma: 0.2 } },
    changeOver: { median: 60, sigma: 0.4 },
  });
  const station = (turns: number): Station | undefined => withKnown(hall, [own(turns)]).hall.stations[1];
  const doubt = (turns: number) => withKnown(hall, [own(turns)]).beliefs[1]?.doubt ?? 0;
  expect(withKnown(hall, []).hall).toEqual(hall);
  expect(station(2)?.turn.median).toBeLessThan(150);
  expect(station(200)?.turn.median).toBeGreaterThan(225);
  expect(doubt(200)).toBeLessThan(doubt(10));
  expect(doubt(10)).toBeLessThan(withKnown(hall, []).beliefs[1]?.doubt ?? 0);
});

test("a heat takes as long as the slowest: more lanes, more time, and never less than a turn", () => {
  const station = { ...core, turn: { median: 120, sigma: 0.4 } };
  const means = [1, 2, 4, 6, 12].map((athletes) => meanCycle(station, athletes));
  expect(means).toEqual([...means].sort((a, b) => a - b));
  // The mean of the largest of four lognormal times with sigma 0.4: 1.62 medians (drawn a million times).
  expect((means[2] ?? 0) - 60).toBeGreaterThan(120 * 1.55);
  expect((means[2] ?? 0) - 60).toBeLessThan(120 * 1.7);
});

test("whoever waited longest at a keyed station is at it since the last end", () => {
  const [first, second] = athletesOf(2, ["agility"], { arrives: { from: -9000, until: -9000 } });
  const waiting = [
    { ...second, id: 11, rested: -200 },
    { ...first, id: 12, rested: -400 },
  ] as Moment["athletes"];
  const done = [turn(3, "agility", -70)];
  expect(withUnseen({ hall, athletes: waiting, running: [], done }).running).toEqual([
    { test: "agility", athletes: [12], since: -40 },
  ]);
  // A place that has been free for an hour stands: nobody is guessed to be at it.
  expect(
    withUnseen({ hall, athletes: waiting, running: [], done: [turn(3, "agility", -3600)] }).running,
  ).toEqual([]);
});
