import type { Attack } from "../domain/privacy/neighbour.ts";
import type { PublishedRow, TestSummary } from "../domain/privacy/publish.ts";
import type { Likeness, Risk } from "../domain/privacy/risk.ts";
import type { Protected, Strictness } from "../domain/privacy/rule.ts";
import type { Subtraction } from "../domain/privacy/subtraction.ts";
import type { DayProtocol } from "../store/tables/days.ts";

/** Version of a bundle's files and columns; goes up when readers have to know of a change. */
export const formatVersion = 2;

/** All contents of a bundle. Data not in here can't be in the file. */
export interface Contents extends Pick<Protected, "kind" | "decisions" | "suppressed"> {
  readonly quarter: string;
  /** True for the demo's invented athletes, which the file and its name say. */
  readonly demo: boolean;
  /** True for a rehearsal: no log keeps a second bundle of it from being made, so it must not be shared. */
  readonly rehearsal: boolean;
  readonly protocols: readonly DayProtocol[];
  readonly rows: readonly PublishedRow[];
  readonly summaries: readonly TestSummary[];
  readonly strictness: Strictness;
  /** k and l reached by the released rows, and the remaining risk. */
  readonly likeness: Likeness;
  readonly risk: Risk;
  /** A neighbour's success with the released rows. */
  readonly attack: Attack;
  /** The success of a neighbour who noted everybody except hidden athletes. */
  readonly subtraction: Subtraction;
}

/** One file of a bundle, as text (UTF-8). */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** Makes a file of readable JSON, with a final line end. */
export function jsonFile(name: string, value: unknown): TextFile {
  return { name, text: `${JSON.stringify(value, null, 2)}\n` };
}
