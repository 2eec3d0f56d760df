import { aheadAfter, callOrder, lostBy, type StationPace } from "../../electron/domain/queue/passing.ts";
import type { QueuePlace } from "../../electron/domain/queue/queue.ts";
import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";

/** A hall as the calls see it. Times in seconds. */
export interface CalledHall {
  readonly paces: Readonly<Record<TestCode, StationPace & { readonly places: number }>>;
  readonly rest: number;
  /** How long a heat with free lanes waits for each next athlete. */
  readonly patience: number;
}

/** An athlete, with what each turn really takes, change-over and all; no time for a test that is skipped. */
export interface CalledAthlete {
  readonly arrives: number;
  readonly turns: ReadonlyMap<TestCode, number>;
}

/** What a day came to: when each started, how many were called before each who came after, and the end. */
export interface CalledDay {
  readonly starts: readonly ReadonlyMap<TestCode, number>[];
  readonly lost: readonly number[];
  readonly end: number;
}

const instant = (seconds: number) => new Date(Math.round(seconds * 1000)).toISOString();

/**
 * Holds a day station after station, each calling by the program's own rule. Who is rested, who came first and what everybody
 * has lost is kept here, apart from it.
 */
export function holdDay(hall: CalledHall, athletes: readonly CalledAthlete[], bound: number): CalledDay {
  const since = athletes.map(({ arrives }) => arrives);
  const ready = athletes.map(({ arrives }) => arrives);
  const starts = athletes.map(() => new Map<TestCode, number>());
  const lost = athletes.map(() => 0);
  let end = 0;
  for (const test of testCodes) holdStation(test);
  return { starts, lost, end };

  function holdStation(test: TestCode): void {
    const pace = hall.paces[test];
    const lanes = pace.together / pace.places;
    const waiting = new Set([...athletes.keys()].filter((id) => athletes[id]?.turns.has(test)));
    const passes = new Map<number, number>();
    const free = Array.from({ length: pace.places }, () => 0);
    const cycles = Object.fromEntries(testCodes.map((each) => [each, hall.paces[each].cycle]));
    const ahead = new Map([...waiting].map((id) => [id, aheadOf(id, test, cycles)]));
    for (let now = 0; waiting.size > 0; ) {
      const place = free.indexOf(Math.min(...free));
      now = firstMoment(waiting, Math.max(now, free[place] ?? 0), lanes);
      const line = lineAt(waiting, now);
      const passing = { bound, pace, passes, ahead, lostElsewhere: new Map(lost.entries()) };
      const called = callOrder(line, lanes, passing)
        .slice(0, lanes)
        .map(({ athleteId }) => athleteId);
      for (const { athleteId } of line) {
        if (called.includes(athleteId)) continue;
        const behind = called.filter((id) => isAfter(id, athleteId)).length;
        passes.set(athleteId, (passes.get(athleteId) ?? 0) + behind);
      }
      free[place] = now + Math.max(...called.map((id) => athletes[id]?.turns.get(test) ?? 0));
      for (const id of called) start(id, test, now);
      for (const id of called) waiting.delete(id);
    }
    for (const [id, count] of passes) lost[id] = (lost[id] ?? 0) + lostBy(count, pace);
  }

  function aheadOf(id: number, test: TestCode, cycles: Record<string, number>): number {
    const leftOut = new Set(testCodes.filter((each) => !athletes[id]?.turns.has(each)));
    return aheadAfter(test, { done: new Set(), leftOut }, cycles as Record<TestCode, number>, hall.rest);
  }

  function isAfter(id: number, other: number): boolean {
    const [one, another] = [since[id] ?? 0, since[other] ?? 0];
    return one > another || (one === another && id > other);
  }

  function lineAt(waiting: ReadonlySet<number>, now: number): QueuePlace[] {
    return [...waiting]
      .filter((id) => (ready[id] ?? 0) <= now)
      .sort((a, b) => (isAfter(a, b) ? 1 : -1))
      .map((id) => ({
        ...{ athleteId: id, bib: id, calledAt: null },
        ...{ waitingSince: instant(since[id] ?? 0), readyAt: instant(ready[id] ?? 0) },
      }));
  }

  /** When somebody is rested, and the heat is full or nobody comes in time to wait for. */
  function firstMoment(waiting: ReadonlySet<number>, from: number, lanes: number): number {
    const times = [...waiting].map((id) => ready[id] ?? 0).sort((a, b) => a - b);
    let now = Math.max(from, times[0] ?? from);
    for (const time of times.slice(0, lanes)) if (time <= now + hall.patience) now = Math.max(now, time);
    return now;
  }

  function start(id: number, test: TestCode, now: number): void {
    const until = now + (athletes[id]?.turns.get(test) ?? 0);
    starts[id]?.set(test, now);
    since[id] = until;
    ready[id] = until + hall.rest;
    end = Math.max(end, until);
  }
}
