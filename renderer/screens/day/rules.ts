import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { protocols } from "../../../electron/domain/tests/registry.ts";

type Exercise = (typeof protocols.endurance.defaults)["exercises"][number]["exercise"];

/** A number of a test's rules that the organiser can change. */
export type RuleName =
  | "bpm"
  | "beatsPerRep"
  | "missesToStop"
  | "crossSize"
  | "seconds"
  | "touchPenalty"
  | "trials"
  | "rounds"
  | Exercise;

export type Rule = readonly [name: RuleName, value: number];

/** The numbers of a test's rules, in the units in which people think: the side of the cross in cm. */
export function rulesOf(test: TestCode, parameters: unknown): Rule[] {
  switch (test) {
    case "push-up": {
      const { bpm, beatsPerRep, missesToStop } = protocols[test].parameters.parse(parameters);
      return [
        ["bpm", bpm],
        ["beatsPerRep", beatsPerRep],
        ["missesToStop", missesToStop],
      ];
    }
    case "agility": {
      const { seconds, crossSize, touchPenalty } = protocols[test].parameters.parse(parameters);
      return [
        ["seconds", seconds],
        ["crossSize", crossSize / 10],
        ["touchPenalty", touchPenalty],
      ];
    }
    case "vertical":
      return [["trials", protocols[test].parameters.parse(parameters).trials]];
    case "core":
      // Its staging is one of a kind: there is nothing to change (core.ts).
      return [];
    case "endurance": {
      const { rounds, exercises } = protocols[test].parameters.parse(parameters);
      return [["rounds", rounds], ...exercises.map(({ exercise, count }) => [exercise, count] as const)];
    }
  }
}

/** The parameters with other numbers; whether they can be held is for the API to say. */
export function withRules(test: TestCode, parameters: unknown, rules: readonly Rule[]): unknown {
  const values = new Map(rules);
  if (test === "endurance") {
    const { rounds, exercises } = protocols[test].parameters.parse(parameters);
    return {
      rounds: values.get("rounds") ?? rounds,
      exercises: exercises.map((each) => ({ ...each, count: values.get(each.exercise) ?? each.count })),
    };
  }
  const changed = [...values].map(([name, value]) => [
    name,
    name === "crossSize" ? Math.round(value * 10) : value,
  ]);
  return { ...protocols[test].parameters.parse(parameters), ...Object.fromEntries(changed) };
}
