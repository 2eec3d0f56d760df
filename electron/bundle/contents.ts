import type { Attack } from "../domain/privacy/neighbour.ts";
import type { PublishedRow, TestSummary } from "../domain/privacy/publish.ts";
import type { Likeness, Risk } from "../domain/privacy/risk.ts";
import type { Protected, Strictness } from "../domain/privacy/rule.ts";
import type { Subtraction } from "../domain/privacy/subtraction.ts";
import type { DayProtocol } from "../store/tables/days.ts";

/** Version of the files and columns of a bundle; goes up when a reader has to know of a change. */
export const formatVersion = 2;

/** All that a bundle is made of. Whatever is not in here can't be in the file. */
export interface Contents extends Pick<Protected, "kind" | "decisions" | "suppressed"> {
  readonly quarter: string;
  /** True for the demonstration's invented athletes: said in the file and in its name. */
  readonly demo: boolean;
  /** True where a day is only tried out: no log keeps a second bundle of it from being made, so it is not to be handed on. */
  readonly rehearsal: boolean;
  readonly protocols: readonly DayProtocol[];
  readonly rows: readonly PublishedRow[];
  readonly summaries: readonly TestSummary[];
  readonly strictness: Strictness;
  /** Of the rows that leave: k and l reached, and the risk that is left. */
  readonly likeness: Likeness;
  readonly risk: Risk;
  /** What a neighbour makes of the rows that leave. */
  readonly attack: Attack;
  /** What one makes of them who noted everybody but those whom the board hides. */
  readonly subtraction: Subtraction;
}

/** One file of a bundle, as text (UTF-8). */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** JSON as people can read it, with a line end at the end. */
export function jsonFile(name: string, value: unknown): TextFile {
  return { name, text: `${JSON.stringify(value, null, 2)}\n` };
}
