import { expect, test } from "vitest";
import { createTableClock } from "../../../renderer/sound/table-clock.ts";

/** A page at a moment of its own, with a wall clock that is an hour ahead of it. */
function page() {
  const time = { now: 10_000, wall: 3_610_000 };
  const clock = createTableClock(
    () => time.now,
    () => time.wall,
  );
  const pass = (ms: number) => {
    time.now += ms;
    time.wall += ms;
  };
  return { time, clock, pass };
}

const exchange = (askedAt: number, answeredAt: number, shownMs: number) => ({ askedAt, answeredAt, shownMs });

test("the surest reading says when something happened on the table's clock, and how far that may be off", () => {
  const { clock } = page();
  expect(clock.at(10_000)).toBeNull();
  clock.learn(exchange(9_900, 10_000, 500_050), "b");
  expect(clock.at(10_000)).toEqual({ ms: 500_100, boot: "b", doubtMs: 50 });
  clock.learn(exchange(10_000, 10_020, 500_112), "b");
  clock.learn(exchange(10_000, 10_300, 500_290), "b");
  expect(clock.at(10_020)).toEqual({ ms: 500_122, boot: "b", doubtMs: 10 });
  // An event from before the reading has its time too.
  expect(clock.at(9_020)?.ms).toBe(499_122);
});

test("what was read long ago is less sure, so that a later reading takes its place", () => {
  const { clock, pass } = page();
  clock.learn(exchange(9_990, 10_000, 500_000), "b");
  pass(600_000);
  // Two crystals 100 millionths apart: 60 ms in ten minutes.
  expect(clock.at(610_000)?.doubtMs).toBeCloseTo(65, 6);
  clock.learn(exchange(609_960, 610_000, 1_100_000), "b");
  expect(clock.at(610_000)).toEqual({ ms: 1_100_020, boot: "b", doubtMs: 20 });
});

test("a reading from before the machine slept, or of another boot of the table, is not used", () => {
  const { time, clock } = page();
  clock.learn(exchange(9_990, 10_000, 500_000), "b");
  time.wall += 30_000;
  expect(clock.at(10_000)).toBeNull();
  clock.learn(exchange(9_800, 10_000, 530_000), "b");
  expect(clock.at(10_000)).toEqual({ ms: 530_100, boot: "b", doubtMs: 100 });
  clock.learn(exchange(9_700, 10_000, 900), "another");
  expect(clock.at(10_000)).toEqual({ ms: 1_050, boot: "another", doubtMs: 150 });
});
