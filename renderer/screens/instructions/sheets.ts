import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import type { Answers } from "../../app/answers.ts";

type Outputs = Answers["day"];

type DayAtHand = NonNullable<Outputs["current"]["day"]>;
export type HeldTest = Outputs["protocols"][number];

/** The data of a day's sheets. */
export interface DaySheets {
  readonly day: DayAtHand;
  /** The rules of each test, in the order of the day. */
  readonly tests: readonly HeldTest[];
}

/** One page: a station's, or the athletes'. */
export type SheetName = TestCode | "athlete";
/** The pages that can be printed at once. */
export type WhichSheets = SheetName | "all";

/** The pages in the order of print: the athletes' comes last. */
const sheetNames: readonly SheetName[] = [...testCodes, "athlete"];
export const whiches: readonly WhichSheets[] = ["all", ...sheetNames];

export const papers = ["a4", "letter"] as const;
export type Paper = (typeof papers)[number];

/** Returns the pages of a selection. */
export function sheetsOf(which: WhichSheets): readonly SheetName[] {
  return which === "all" ? sheetNames : [which];
}
