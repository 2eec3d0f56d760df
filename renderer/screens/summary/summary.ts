import type { ReactNode } from "react";
import type { Answers } from "../../app/answers.ts";
import type { Column } from "../../parts/layout/DataTable.tsx";

type Outputs = Answers["summary"];

/** What the summary of a day tells. */
export type Summary = NonNullable<Outputs["get"]>;
export type SummaryRow = Summary["rows"][number];
export type TestCell = SummaryRow["tests"][number];
export type SummaryMark = TestCell["marks"][number];
export type Gap = NonNullable<TestCell["gap"]>;
export type Spread = NonNullable<Summary["stations"][number]["atWork"]>;

/** One part of a summary: the same on the screen and on paper. */
export interface SummaryPart<Line> {
  readonly key: string;
  readonly title: string;
  /** On the screen, at the right of the heading. */
  readonly aside?: ReactNode;
  /** Before the table, in a sentence or two. */
  readonly lead?: string;
  readonly columns: readonly Column<Line>[];
  readonly lines: readonly Line[];
  readonly lineKey: (line: Line) => string | number;
  readonly nameColumn?: string;
  /** What stands in place of a table without lines. */
  readonly empty: string;
  /** After the table: how to read it. */
  readonly notes?: readonly string[];
  /** Height of a line on the screen, in px, where it is not one line of text. */
  readonly rowHeight?: number;
  /** Widths on paper in the order of the columns, in parts of the whole; as on the screen where there are none. */
  readonly paperWidths?: readonly number[];
}

/** A part whose lines nobody looks into: it only hands them on. */
export type AnyPart = SummaryPart<never>;

export function anyPart<Line>(part: SummaryPart<Line>): AnyPart {
  return part as unknown as AnyPart;
}
