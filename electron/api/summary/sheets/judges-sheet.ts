import type { JudgeRow } from "../../../domain/summary/judges.ts";
import { type Column, type SummarySheet, sheetOf } from "./sheet.ts";
import { inTestUnit, unitOf } from "./values.ts";

const findings =
  "`too-few` fewer than five athletes with an earlier mark on either side, so nothing is said; `alike` chance alone may " +
  "make such a difference; `higher`, `lower` chance alone seldom does (which does not say why: other athletes, another " +
  "hour, or another eye)";

const columns: Column<JudgeRow>[] = [
  { name: "test", unit: "code", means: "The test", cell: ({ test }) => test },
  {
    name: "variant",
    unit: "full, knee or empty",
    means: "How push-ups were done",
    cell: ({ variant }) => variant,
  },
  {
    name: "judge",
    unit: "",
    means: "Initials entered with the mark; of a corrected mark those of the first entry",
    cell: ({ judge }) => (judge.kind === "named" ? judge.name : null),
  },
  {
    name: "judge_kind",
    unit: "code",
    means:
      "`named` one person; `several` different people entered parts of the mark; `unnamed` a sheet that says nobody",
    cell: ({ judge }) => judge.kind,
  },
  { name: "marks", unit: "", means: "How many complete marks", cell: ({ marks }) => marks.count },
  {
    name: "median",
    unit: "see unit",
    means: "Their middle",
    cell: ({ test, marks }) => inTestUnit(test, marks.median),
  },
  {
    name: "lower_quartile",
    unit: "see unit",
    means: "A quarter are below; empty of fewer than four",
    cell: ({ test, marks }) => inTestUnit(test, marks.lower),
  },
  {
    name: "upper_quartile",
    unit: "see unit",
    means: "A quarter are above; empty of fewer than four",
    cell: ({ test, marks }) => inTestUnit(test, marks.upper),
  },
  {
    name: "lowest",
    unit: "see unit",
    means: "The lowest",
    cell: ({ test, marks }) => inTestUnit(test, marks.lowest),
  },
  {
    name: "highest",
    unit: "see unit",
    means: "The highest",
    cell: ({ test, marks }) => inTestUnit(test, marks.highest),
  },
  { name: "unit", unit: "", means: "The unit of the marks and changes", cell: ({ test }) => unitOf(test) },
  {
    name: "cadences_judged",
    unit: "cadences",
    means: "Push-ups judged cadence by cadence",
    cell: ({ cadences }) => cadences?.judged ?? null,
  },
  {
    name: "cadences_off",
    unit: "cadences",
    means: "Of these, off the beat",
    cell: ({ cadences }) => cadences?.off ?? null,
  },
  {
    name: "cadences_athletes",
    unit: "athletes",
    means: "Of so many athletes",
    cell: ({ cadences }) => cadences?.athletes ?? null,
  },
  {
    name: "changes",
    unit: "athletes",
    means: "Push-ups: how many of the athletes had an earlier mark",
    cell: ({ compared }) => (compared === null ? null : (compared.own?.count ?? 0)),
  },
  {
    name: "median_change",
    unit: "see unit",
    means: "The middle of their changes on the last test",
    cell: ({ test, compared }) => inTestUnit(test, compared?.own?.median),
  },
  {
    name: "others_changes",
    unit: "athletes",
    means: "The same of everybody whom others judged",
    cell: ({ compared }) => (compared === null ? null : (compared.others?.count ?? 0)),
  },
  {
    name: "others_median_change",
    unit: "see unit",
    means: "The middle of their changes",
    cell: ({ test, compared }) => inTestUnit(test, compared?.others?.median),
  },
  {
    name: "shift",
    unit: "see unit",
    means: "How far the one set of changes lies above the other (Hodges-Lehmann)",
    cell: ({ test, compared }) => inTestUnit(test, compared?.shift?.amount),
  },
  {
    name: "shift_low",
    unit: "see unit",
    means: "The least it may be: rank-sum interval, 95 % for all judges together",
    cell: ({ test, compared }) => inTestUnit(test, compared?.shift?.low),
  },
  {
    name: "shift_high",
    unit: "see unit",
    means: "The most it may be",
    cell: ({ test, compared }) => inTestUnit(test, compared?.shift?.high),
  },
  { name: "finding", unit: "code", means: findings, cell: ({ compared }) => compared?.finding ?? null },
];

/** `judges.csv`: marks by who entered them. */
export function judgesSheet(judges: readonly JudgeRow[]): SummarySheet {
  return sheetOf(
    "judges.csv",
    "One test, variant and judge: the marks, and for push-ups how they changed.",
    columns,
    judges,
  );
}
