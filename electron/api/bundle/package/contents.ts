import type { PublishedRow, Summary } from "../../../domain/privacy/publish.ts";
import type { Protected } from "../../../domain/privacy/rule.ts";
import type { DayProtocol } from "../../../store/days.ts";

/** Version of the files and columns of a bundle; goes up when a reader has to know of a change. */
export const formatVersion = 1;

/** All that a bundle is made of. Whatever is not in here can't be in the file. */
export interface Contents {
  readonly quarter: string;
  /** True for the demonstration's invented athletes: said in the file and in its name. */
  readonly demo: boolean;
  readonly protocols: readonly DayProtocol[];
  readonly rows: readonly PublishedRow[];
  readonly summaries: readonly Summary[];
  readonly k: number;
  readonly kReached: number | null;
  readonly ruleName: string;
  readonly suppressed: Protected["suppressed"];
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
