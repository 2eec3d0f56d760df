import { touchNames } from "../../../../electron/domain/keyed/keyed.ts";
import type { Typed } from "../../../../electron/domain/keyed/reading.ts";
import type { TestCode } from "../../../../electron/domain/protocols/protocol.ts";

/** A field that is typed into. */
export interface Field {
  readonly name:
    | "reps"
    | "offAtEnd"
    | "laps"
    | "extra"
    | "touches"
    | "standingReach"
    | "bodyMass"
    | (typeof touchNames)[number]
    | "time"
    | "roundsDone"
    | "repsDone";
  readonly digits: "whole" | "fraction" | "time";
  /** length and mass follow the unit of the desk. */
  readonly unit?: "length" | "mass";
  /** Enter passes it by. */
  readonly aside?: true;
  /** Enter in it while it is empty saves: whoever jumped twice is done. */
  readonly mayEnd?: true;
}

/** One of two; `keys` choose while the fields have the focus. */
export type Choosing =
  | {
      readonly name: "variant";
      readonly options: readonly ["full", "knee"];
      readonly keys: readonly [string, string];
    }
  | { readonly name: "direction"; readonly options: readonly ["cw", "ccw"]; readonly keys: null }
  | {
      readonly name: "finished";
      readonly options: readonly ["yes", "no"];
      readonly keys: readonly [string, string];
    };

/** The key that changes a choice which has no keys of its own. */
export const otherKey = "D";

const whole = { digits: "whole" } as const;
const length = { digits: "fraction", unit: "length" } as const;

/** The fields of a test, in the order in which Enter goes through them. `room`: how many more attempts fit. */
export function fieldsOf(test: TestCode, values: Typed, room: number): readonly Field[] {
  switch (test) {
    case "push-up":
      return [
        { name: "reps", ...whole },
        { name: "offAtEnd", ...whole },
      ];
    case "agility":
      return [
        { name: "laps", ...whole },
        { name: "extra", ...whole },
        { name: "touches", ...whole },
      ];
    case "vertical":
      return [
        { name: "standingReach", ...length },
        ...touchNames
          .slice(0, Math.max(1, room))
          .map((name, index) => ({ name, ...length, ...(index > 0 && { mayEnd: true as const }) })),
        { name: "bodyMass", digits: "fraction", unit: "mass", aside: true },
      ];
    case "core":
      return [{ name: "time", digits: "time" }];
    case "endurance":
      return values.finished === "no"
        ? [
            { name: "roundsDone", ...whole },
            { name: "repsDone", ...whole },
          ]
        : [{ name: "time", digits: "time" }];
  }
}

/** What is chosen beside the fields of a test. */
export function choiceOf(test: TestCode): Choosing | null {
  if (test === "push-up") return { name: "variant", options: ["full", "knee"], keys: ["F", "K"] };
  if (test === "agility") return { name: "direction", options: ["cw", "ccw"], keys: null };
  if (test === "endurance") return { name: "finished", options: ["yes", "no"], keys: ["F", "N"] };
  return null;
}
