import type { Missing } from "../../../domain/summary/missing.ts";
import type { TestCode } from "../../../domain/tests/registry.ts";
import { gapCodes } from "./codes.ts";
import { type Column, type SummarySheet, sheetOf } from "./sheet.ts";
import { whoColumns } from "./who.ts";

type Line = Missing & { readonly test: TestCode };

const columns: Column<Line>[] = [
  ...whoColumns<Line>(({ who }) => who),
  { name: "test", unit: "code", means: "The test without a complete mark", cell: ({ test }) => test },
  { name: "why", unit: "code", means: gapCodes, cell: ({ kind }) => kind },
  {
    name: "reason",
    unit: "",
    means: "What somebody said about it; never anything of the readiness questions",
    cell: ({ reason }) => reason,
  },
  {
    name: "decided_by",
    unit: "",
    means: "Initials of who decided; empty where nobody had to",
    cell: ({ by }) => by,
  },
  {
    name: "rounds_done",
    unit: "rounds",
    means: "Of a circuit that was not finished",
    cell: ({ mark }) => (mark?.state === "unfinished" ? mark.rounds : null),
  },
  {
    name: "reps_done",
    unit: "reps",
    means: "Of the round after those",
    cell: ({ mark }) => (mark?.state === "unfinished" ? mark.reps : null),
  },
];

/** `missing.csv`: one row an athlete and test without a complete mark. */
export function missingSheet(missing: readonly Missing[]): SummarySheet {
  const lines = missing.flatMap((each) => each.tests.map((test) => ({ ...each, test })));
  return sheetOf("missing.csv", "One athlete and test without a complete mark, and why.", columns, lines);
}
