import { expect, test } from "vitest";
import { fillFrom } from "../../../electron/domain/heats/fill.ts";
import { type QueuePlace, queueFor, type Runner } from "../../../electron/domain/queue/queue.ts";

const at = (minute: number) => `2026-11-14T10:${String(minute).padStart(2, "0")}:00.000Z`;
function place(bib: number, readyAt = at(0), calledAt: string | null = null): QueuePlace {
  return { athleteId: bib, bib, waitingSince: at(0), readyAt, calledAt };
}
const bibs = (queue: readonly QueuePlace[], free: number, inLanes: number[] = []) => {
  const { called, resting } = fillFrom(queue, new Set(inLanes), free, at(10));
  return { called: called.map(({ bib }) => bib), resting: resting?.bib ?? null };
};

test("lanes fill in turn with whoever is rested; nobody is put in two", () => {
  const queue = [place(1), place(2, at(11)), place(3, at(10)), place(4)];
  expect(bibs(queue, 2)).toEqual({ called: [1, 3], resting: null });
  expect(bibs(queue, 2, [1])).toEqual({ called: [3, 4], resting: null });
  expect(bibs(queue, 4)).toEqual({ called: [1, 3, 4], resting: 2 });
  expect(bibs(queue, 0)).toEqual({ called: [], resting: null });
});

test("whoever was called by hand comes first, rested or not", () => {
  expect(bibs([place(5, at(30), at(9)), place(1), place(2)], 2)).toEqual({ called: [5, 1], resting: null });
});

test("the one who is rested first is named when all rest", () => {
  expect(bibs([place(1, at(14)), place(2, at(12))], 3)).toEqual({ called: [], resting: 2 });
});

test("whoever was called and did not come goes to the end of the queue", () => {
  const runner = (bib: number, minute: number, more: Partial<Runner> = {}): Runner => ({
    ...{
      athleteId: bib,
      bib,
      checkedIn: at(minute),
      done: new Set(),
      leftOut: new Set(),
      lastDone: new Map(),
    },
    ...more,
  });
  const runners = [
    runner(1, 0, { absent: new Map([["push-up", at(9)]]) }),
    runner(2, 1, { absent: new Map([["core", at(9)]]) }),
    runner(3, 2),
  ];
  const queue = queueFor("push-up", runners, new Map(), 5);
  expect(queue.map(({ bib }) => bib)).toEqual([2, 3, 1]);
  expect(queue.at(-1)).toMatchObject({ waitingSince: at(9), readyAt: at(0) });
});
