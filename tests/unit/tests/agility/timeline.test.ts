import { expect, test } from "vitest";
import { agility } from "../../../../electron/domain/tests/agility/protocol.ts";
import { countInLeft, secondsLeft, trialCues } from "../../../../renderer/tests/agility/timeline.ts";

test("each trial has its own count-in, signal and whistle, whenever in the heat it starts", () => {
  const cues = trialCues([63_000, 120_500], agility.defaults);
  expect([...cues(0, 125_000)].map(({ atMs, cue }) => `${atMs} ${cue}`)).toEqual([
    "60000 count-in",
    "61000 count-in",
    "62000 count-in",
    "63000 start",
    "73000 end",
    "117500 count-in",
    "118500 count-in",
    "119500 count-in",
    "120500 start",
  ]);
  expect([...cues(73_000, 73_001)]).toEqual([{ atMs: 73_000, cue: "end" }]);
  expect([...cues(63_001, 73_000)]).toEqual([]);
});

test("the clock shows what is left, and zero only at the whistle", () => {
  expect([13_000, 13_001, 22_999, 23_000, 24_000].map((now) => secondsLeft(23_000, now))).toEqual([
    "10.0",
    "10.0",
    "0.1",
    "0.0",
    "0.0",
  ]);
  expect([10_000, 10_001, 12_999].map((now) => countInLeft(13_000, now))).toEqual([3, 3, 1]);
});
