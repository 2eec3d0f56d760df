import { type Stage, stageAt } from "../../electron/domain/tests/core/protocol.ts";
import type { ParametersOf, TestCode } from "../../electron/domain/tests/registry.ts";
import { protocols } from "../../electron/domain/tests/registry.ts";
import { formatTime } from "../../electron/domain/units.ts";

/** The numbers that stand in the sentences of a test's rules, from the parameters of the day. */
export function numbersOf(test: TestCode, parameters: unknown): Record<string, string | number> {
  switch (test) {
    case "push-up": {
      const { bpm, beatsPerRep, missesToStop } = protocols["push-up"].parameters.parse(parameters);
      const seconds = Math.round((60_000 * beatsPerRep) / bpm) / 1000;
      return { bpm, beats: beatsPerRep, seconds, misses: missesToStop };
    }
    case "agility": {
      const { crossSize, seconds, touchPenalty } = protocols.agility.parameters.parse(parameters);
      const feet = Math.round(crossSize / 30.48) / 10;
      return { cm: crossSize / 10, feet, seconds, penalty: touchPenalty };
    }
    case "vertical":
      return { ...protocols.vertical.parameters.parse(parameters) };
    case "core": {
      const { cycle } = protocols.core.parameters.parse(parameters);
      return { cycle: formatTime(cycle * 1000, false) };
    }
    case "endurance":
      return { rounds: protocols.endurance.parameters.parse(parameters).rounds };
  }
}

/** The stages of the plank's first round, in order. */
export function stagesOf(parameters: ParametersOf<"core">): Stage[] {
  const stages: Stage[] = [];
  for (let second = 0; second < parameters.cycle; second = stageAt(parameters, second).until)
    stages.push(stageAt(parameters, second));
  return stages;
}
