import { expect, test } from "vitest";
import { boxesOf } from "../../../electron/domain/keyed/boxes.ts";
import { readKeyed } from "../../../electron/domain/keyed/keyed.ts";
import { defaultParameters, type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";

const names = (test: TestCode, parameters: unknown = defaultParameters(test)) => {
  const { tick, groups } = boxesOf(test, parameters);
  return [
    tick?.name ?? null,
    ...groups.map(({ option, fields }) => [option, ...fields.map(({ name }) => name)]),
  ];
};

test("a record sheet has the boxes of each test in the order in which they are entered", () => {
  expect(names("push-up")).toEqual(["variant", [null, "reps", "offAtEnd"]]);
  expect(names("agility")).toEqual([
    null,
    ["cw", "laps", "extra", "touches"],
    ["ccw", "laps", "extra", "touches"],
  ]);
  expect(names("vertical")).toEqual([null, [null, "standingReach", "touch1", "touch2", "touch3"]]);
  expect(names("core")).toEqual([null, [null, "time"]]);
  expect(names("endurance")).toEqual([null, ["yes", "time"], ["no", "roundsDone", "repsDone"]]);
});

test("a day with two trials of the leap has two boxes for touches", () => {
  expect(names("vertical", { trials: 2 })).toEqual([null, [null, "standingReach", "touch1", "touch2"]]);
});

test("what stands in the boxes, typed in their order, is a whole attempt of every test", () => {
  const typed = {
    reps: "20",
    offAtEnd: "3",
    laps: "7",
    extra: "2",
    touches: "1",
    time: "2:31",
    roundsDone: "2",
  };
  const values = {
    ...typed,
    repsDone: "40",
    standingReach: "219",
    touch1: "260",
    touch2: "262",
    touch3: "261",
  };
  for (const code of testCodes) {
    const { tick, groups } = boxesOf(code, defaultParameters(code));
    for (const { option, fields } of groups) {
      const boxes = Object.fromEntries(
        fields.map(({ name }) => [name, values[name as keyof typeof values] ?? ""]),
      );
      const chosen = option ?? tick?.options[0] ?? "";
      const choice = code === "push-up" ? "variant" : code === "agility" ? "direction" : "finished";
      const keyed = readKeyed(code, defaultParameters(code), { ...boxes, [choice]: chosen }, "cm");
      expect(keyed, `${code} ${chosen}`).not.toHaveProperty("errors");
    }
  }
});
