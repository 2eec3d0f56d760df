import type { JudgeRow } from "../../../domain/summary/judges.ts";
import { column, type SheetColumn, type SummarySheet, sheetOf } from "./sheet.ts";
import { inTestUnit, unitOf } from "./values.ts";

const findings =
  "`too-few` fewer than five athletes with an earlier mark on either side, so nothing is said; `alike` chance alone may " +
  "make such a difference; `higher`, `lower` chance alone seldom does (which does not say why: other athletes, another " +
  "hour, or another eye)";

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
  column("unit", "", "The unit of the marks and changes", ({ test }) => unitOf(test)),
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
  column("changes", "athletes", "Push-ups: how many of the athletes had an earlier mark", ({ compared }) =>
    compared === null ? null : (compared.own?.count ?? 0),
  ),
  column("median_change", "see unit", "The middle of their changes on the last test", ({ test, compared }) =>
    inTestUnit(test, compared?.own?.median),
  ),
  column("others_changes", "athletes", "The same of everybody whom others judged", ({ compared }) =>
    compared === null ? null : (compared.others?.count ?? 0),
  ),
  column("others_median_change", "see unit", "The middle of their changes", ({ test, compared }) =>
    inTestUnit(test, compared?.others?.median),
  ),
  column(
    "shift",
    "see unit",
    "How far the one set of changes lies above the other (Hodges-Lehmann)",
    ({ test, compared }) => inTestUnit(test, compared?.shift?.amount),
  ),
  column(
    "shift_low",
    "see unit",
    "The least it may be: rank-sum interval, 95 % for all judges together",
    ({ test, compared }) => inTestUnit(test, compared?.shift?.low),
  ),
  column("shift_high", "see unit", "The most it may be", ({ test, compared }) =>
    inTestUnit(test, compared?.shift?.high),
  ),
  column("finding", "code", findings, ({ compared }) => compared?.finding ?? null),
];

/** Makes `judges.csv`: marks by judge. */
export function judgesSheet(judges: readonly JudgeRow[]): SummarySheet {
  return sheetOf(
    "judges.csv",
    "One test, variant and judge: the marks, and for push-ups how they changed.",
    columns,
    judges,
  );
}
