import type { ReactNode } from "react";
import type { Answers } from "../../app/answers.ts";
import type { Column } from "../../parts/layout/DataTable.tsx";

type Outputs = Answers["summary"];

export type Summary = NonNullable<Outputs["get"]>;
export type SummaryRow = Summary["rows"][number];
export type TestCell = SummaryRow["tests"][number];
export type SummaryMark = TestCell["marks"][number];
export type Gap = NonNullable<TestCell["gap"]>;
export type Spread = NonNullable<Summary["stations"][number]["atWork"]>;

/** One part of a summary, the same on the screen and on paper. */
export interface SummaryPart<Line> {
  readonly key: string;
  readonly title: string;
  /** Right of the heading, only on the screen. */
  readonly aside?: ReactNode;
  /** A sentence or two before the table. */
  readonly lead?: string;
  readonly columns: readonly Column<Line>[];
  readonly lines: readonly Line[];
  readonly lineKey: (line: Line) => string | number;
  readonly nameColumn?: string;
  /** The text in place of a table without lines. */
  readonly empty: string;
  /** Sentences after the table on how to read it. */
  readonly notes?: readonly string[];
  /** Height of a row on the screen, in px, where a cell has more than one line. */
  readonly rowHeight?: number;
  /** Widths on paper in the order of the columns, as parts of the whole; equal ones by default. */
  readonly paperWidths?: readonly number[];
}

/** A part of any kind of line, only handed on. */
export type AnyPart = SummaryPart<never>;

export function anyPart<Line>(part: SummaryPart<Line>): AnyPart {
  return part as unknown as AnyPart;
}
