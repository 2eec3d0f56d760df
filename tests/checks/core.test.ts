import { expect, test } from "vitest";
import { core, stageAt } from "../../electron/domain/tests/core/protocol.ts";
import sentences from "../../resources/locales/en/sentences.json" with { type: "json" };

const stageWords: Record<string, Record<string, string>> = sentences.stages;

function writtenWords(seconds: number): [string, string] {
  const { number, note } = core.write(seconds, "cm");
  const [group = "", name = ""] = note?.key.split(".").slice(-2) ?? [];
  return [number, (stageWords[group]?.[name] ?? "").replace("{{round}}", String(note?.values?.round))];
}

// Common practice, no source: the stages and how a mark is written.
test.each([
  [59, "0:59", "both feet down"],
  [60, "1:00", "one foot up"],
  [90, "1:30", "other foot up"],
  [120, "2:00", "one arm up"],
  [150, "2:30", "other arm up"],
  [180, "3:00", "arm and opposite leg"],
  [209, "3:29", "arm and opposite leg"],
  [210, "3:30", "other arm and leg"],
  [239, "3:59", "other arm and leg"],
  [240, "4:00", "round 2, both feet down"],
  [301, "5:01", "round 2, one foot up"],
])("%i s is written %s, %s", (seconds, number, stage) => {
  expect(writtenWords(seconds)).toEqual([number, stage]);
});

// Common practice, no source: from – to of every stage. A boundary belongs to the stage that begins there, as in
// Tong et al. 2014, Phys Ther Sport 15(1) (from memory).
test.each([
  [0, 60, "both-feet"],
  [60, 90, "one-foot"],
  [90, 120, "other-foot"],
  [120, 150, "one-arm"],
  [150, 180, "other-arm"],
  [180, 210, "arm-and-leg"],
  [210, 240, "other-arm-and-leg"],
])("from %i to %i s: %s, in every round", (from, until, name) => {
  for (const start of [0, 240, 480]) {
    for (const seconds of [start + from, start + until - 0.1]) {
      const round = start / 240 + 1;
      expect(stageAt(core.defaults, seconds)).toMatchObject({
        round,
        name,
        from: start + from,
        until: start + until,
      });
    }
  }
});

// Rounding a held time up would reward it; World Athletics rounds against the athlete too (rule from memory).
test.each([
  [59_999, 59],
  [60_000, 60],
  [60_001, 60],
  [999, 0],
])("%i ms held are %i whole seconds", (held, value) => {
  expect(core.score(core.defaults, [{ held }])).toEqual({ state: "complete", value });
});
