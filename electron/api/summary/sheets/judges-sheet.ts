import type { JudgeRow } from "../../../domain/summary/judges.ts";
import { column, type SheetColumn, type SummarySheet, sheetOf } from "./sheet.ts";
import { inTestUnit, unitOf } from "./values.ts";

const columns: SheetColumn<JudgeRow>[] = [
  column("test", "code", "The test", ({ test }) => test),
  column("variant", "full, knee or empty", "How push-ups were done", ({ variant }) => variant),
  column(
    "judge",
    "",
    "Initials entered with the mark; of a corrected mark those of the first entry",
    ({ judge }) => (judge.kind === "named" ? judge.name : null),
  ),
  column(
    "judge_kind",
    "code",
    "`named` one person; `several` different people entered parts of the mark; `unnamed` a sheet that says nobody",
    ({ judge }) => judge.kind,
  ),
  column("marks", "", "How many complete marks", ({ marks }) => marks.count),
  column("median", "see unit", "Their middle", ({ test, marks }) => inTestUnit(test, marks.median)),
  column("lower_quartile", "see unit", "A quarter are below; empty of fewer than four", ({ test, marks }) =>
    inTestUnit(test, marks.lower),
  ),
  column("upper_quartile", "see unit", "A quarter are above; empty of fewer than four", ({ test, marks }) =>
    inTestUnit(test, marks.upper),
  ),
  column("lowest", "see unit", "The lowest", ({ test, marks }) => inTestUnit(test, marks.lowest)),
  column("highest", "see unit", "The highest", ({ test, marks }) => inTestUnit(test, marks.highest)),
  column("unit", "", "The unit of the marks", ({ test }) => unitOf(test)),
  column(
    "cadences_judged",
    "cadences",
    "Push-ups judged cadence by cadence",
    ({ cadences }) => cadences?.judged ?? null,
  ),
  column("cadences_off", "cadences", "Of these, off the beat", ({ cadences }) => cadences?.off ?? null),
  column(
    "cadences_athletes",
    "athletes",
    "Of so many athletes",
    ({ cadences }) => cadences?.athletes ?? null,
  ),
];

/** Makes `judges.csv`: marks by judge. */
export function judgesSheet(judges: readonly JudgeRow[]): SummarySheet {
  return sheetOf("judges.csv", "One test, variant and judge: the marks.", columns, judges);
}
