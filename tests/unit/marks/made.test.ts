import { expect, test } from "vitest";
import { madeOn } from "../../../electron/domain/marks/made.ts";
import { areAlike, type MadeMark, madeOtherwise } from "../../../electron/domain/marks/otherwise.ts";
import type { TimedAttempt } from "../../../electron/domain/queue/times.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { textOf } from "../domain/text.ts";

/** An attempt at a minute past nine. */
function at(test: TestCode, minute: number, more: Partial<TimedAttempt> = {}): TimedAttempt {
  const time = new Date(Date.UTC(2026, 10, 14, 9, minute)).toISOString();
  return {
    id: `${test} ${minute}`,
    athleteId: 1,
    test,
    at: time,
    replaces: null,
    stands: true,
    ...more,
  };
}

test("the first test of the day has position 1 and no rest; the others count from the last entry of the one before", () => {
  const made = madeOn([at("push-up", 0), at("agility", 8), at("agility", 10), at("vertical", 17)]);
  expect([...made]).toEqual([
    ["push-up", { position: 1, restMinutes: null }],
    ["agility", { position: 2, restMinutes: 8 }],
    ["vertical", { position: 3, restMinutes: 7 }],
  ]);
});

test("whoever begins with the circuit has it at position 1", () => {
  expect(madeOn([at("endurance", 0), at("push-up", 20)]).get("push-up")).toEqual({
    position: 2,
    restMinutes: 20,
  });
});

test("a correction keeps the time of what it corrects, and what no longer stands counts for nothing", () => {
  const slip = at("push-up", 0, { stands: false });
  const right = at("push-up", 50, { replaces: slip.id });
  const wrong = at("core", 3, { stands: false });
  expect([...madeOn([slip, wrong, at("agility", 10), right])]).toEqual([
    ["push-up", { position: 1, restMinutes: null }],
    ["agility", { position: 2, restMinutes: 10 }],
  ]);
});

test("where nobody knows when one of the tests was done, nothing is known of that athlete's day", () => {
  expect(madeOn([at("push-up", 0), at("core", 60, { performed: null })]).size).toBe(0);
  const paper = at("core", 60, { performed: null, stands: false });
  expect(madeOn([at("push-up", 0), paper, at("core", 70, { replaces: paper.id })]).size).toBe(0);
});

test("paper with a time on it counts from that time, whenever it was entered", () => {
  const nine = at("push-up", 0).at;
  const made = madeOn([at("agility", 12), at("push-up", 50, { performed: nine })]);
  expect(made.get("agility")).toEqual({ position: 2, restMinutes: 12 });
});

test("tests that were entered through one another have no rest between them", () => {
  const made = madeOn([at("vertical", 0), at("core", 5), at("vertical", 9), at("endurance", 20)]);
  expect(made.get("core")).toEqual({ position: 2, restMinutes: null });
  expect(made.get("endurance")).toEqual({ position: 3, restMinutes: 11 });
});

const usual: MadeMark = { trials: null, position: 3, restMinutes: 6 };
const said = (now: Partial<MadeMark>, before: Partial<MadeMark> = {}) =>
  madeOtherwise({ ...usual, ...now }, { ...usual, ...before }).map(textOf);

test("marks that were made alike have nothing beside them, nor has what nobody knows", () => {
  expect(said({})).toEqual([]);
  expect(said({ position: null, restMinutes: null })).toEqual([]);
  expect(said({}, { position: null, restMinutes: null })).toEqual([]);
});

test("another position and another rest are told; a few minutes are not", () => {
  expect(said({ position: 1 }, { position: 5 })).toEqual(["Test number 1 of the day, last time number 5."]);
  expect(said({ restMinutes: 5 }, { restMinutes: 20 })).toEqual([
    "5 min after the test before, last time 20 min.",
  ]);
  expect([
    said({ restMinutes: 5 }, { restMinutes: 9 }),
    said({ restMinutes: 12 }, { restMinutes: 20 }),
  ]).toEqual([[], []]);
});

test("the best of one trial is held against no best of three, whichever came first", () => {
  expect(said({ trials: 1 })).toEqual(["Not compared: 1 trial alone, last time all of them."]);
  expect(said({ trials: 1, position: 1 })).toHaveLength(1);
  expect(said({}, { trials: 2 })).toEqual(["Not compared: last time 2 trials alone."]);
  expect(said({ trials: 2 }, { trials: 1 })).toEqual(["Not compared: trials 2, last time 1."]);
  expect([areAlike({ trials: 1 }, { trials: 1 }), areAlike({ trials: null }, { trials: 1 })]).toEqual([
    true,
    false,
  ]);
});
