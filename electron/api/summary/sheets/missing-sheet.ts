import type { Missing } from "../../../domain/summary/missing.ts";
import type { TestCode } from "../../../domain/tests/registry.ts";
import { gapCodes } from "./codes.ts";
import { column, type SheetColumn, type SummarySheet, sheetOf } from "./sheet.ts";
import { whoColumns } from "./who.ts";

type Line = Missing & { readonly test: TestCode };

const columns: SheetColumn<Line>[] = [
  ...whoColumns<Line>(({ who }) => who),
  column("test", "code", "The test without a complete mark", ({ test }) => test),
  column("why", "code", gapCodes, ({ kind }) => kind),
  column(
    "reason",
    "",
    "What somebody said about it; never anything of the readiness questions",
    ({ reason }) => reason,
  ),
  column("decided_by", "", "Initials of who decided; empty where nobody had to", ({ by }) => by),
  column("rounds_done", "rounds", "Of a circuit that was not finished", ({ mark }) =>
    mark?.state === "unfinished" ? mark.rounds : null,
  ),
  column("reps_done", "reps", "Of the round after those", ({ mark }) =>
    mark?.state === "unfinished" ? mark.reps : null,
  ),
];

/** Makes `missing.csv`: one row per athlete and test without a complete mark. */
export function missingSheet(missing: readonly Missing[]): SummarySheet {
  const lines = missing.flatMap((each) => each.tests.map((test) => ({ ...each, test })));
  return sheetOf("missing.csv", "One athlete and test without a complete mark, and why.", columns, lines);
}
