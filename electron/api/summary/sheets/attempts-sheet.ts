import type { SummaryAttempt, SummaryDay, SummaryPerson } from "../../../domain/summary/day.ts";
import { seenCells } from "./seen.ts";
import { type Column, type SummarySheet, sheetOf } from "./sheet.ts";
import { whoColumns } from "./who.ts";

interface Line {
  readonly order: number;
  readonly who: SummaryPerson;
  readonly attempt: SummaryAttempt;
  /** The order of the attempt that it corrects. */
  readonly corrects: number | null;
}

/** A column of what was seen: the same name as in a sheet of results. */
function seenColumn(name: string, unit: string, means: string): Column<Line> {
  return { name, unit, means, cell: ({ attempt }) => seenCells(attempt.test, attempt.seen)[name] ?? null };
}

const columns: Column<Line>[] = [
  { name: "order", unit: "", means: "The order of entry, from 1", cell: ({ order }) => order },
  ...whoColumns<Line>(({ who }) => who),
  { name: "test", unit: "code", means: "The test", cell: ({ attempt }) => attempt.test },
  {
    name: "variant",
    unit: "full, knee or empty",
    means: "How push-ups were done",
    cell: ({ attempt }) => attempt.variant,
  },
  seenColumn("direction", "cw or ccw", "Quadrant jump: clockwise or counter-clockwise"),
  seenColumn("reps", "reps", "Push-ups done in all; the mark is reps less off_at_end"),
  seenColumn("off_at_end", "reps", "Of these, off the beat at the end"),
  seenColumn(
    "cadences",
    ". and x",
    "Each cadence in order, on (.) or off (x), where they were judged one by one",
  ),
  seenColumn("laps", "laps", "Quadrant jump: full laps of four landings"),
  seenColumn("extra", "quadrants", "Landings of the lap that was not finished"),
  seenColumn("touches", "touches", "Touches of a line"),
  seenColumn("standing_reach", "cm", "Vertical leap: highest point touched standing"),
  seenColumn(
    "touch_reach",
    "cm",
    "Highest point touched in the jump; the leap is touch_reach less standing_reach",
  ),
  seenColumn("unit", "", "The unit of the two reaches"),
  seenColumn("time", "s", "Plank: time held, as it was taken; circuit: time to finish, as it was taken"),
  seenColumn("finished", "yes or no", "Circuit: whether all rounds were done"),
  seenColumn("rounds_done", "rounds", "Circuit not finished: whole rounds"),
  seenColumn("reps_done", "reps", "Circuit not finished: reps after them"),
  {
    name: "entered_by",
    unit: "",
    means: "Initials of who judged or keyed it; `sheet`: a sheet that said nobody",
    cell: ({ attempt }) => attempt.enteredBy,
  },
  {
    name: "entered_at",
    unit: "ISO 8601, UTC",
    means: "When it was entered, by the computer's clock",
    cell: ({ attempt }) => attempt.at,
  },
  {
    name: "source",
    unit: "code",
    means: "`heat` timed live; `station` keyed at a station; `sheet` from a sheet of results",
    cell: ({ attempt }) => attempt.source,
  },
  { name: "note", unit: "", means: "What was written beside it", cell: ({ attempt }) => attempt.note },
  {
    name: "stands",
    unit: "yes or no",
    means: "no: it was corrected or taken back, and counts for nothing",
    cell: ({ attempt }) => (attempt.void === null ? "yes" : "no"),
  },
  {
    name: "void_at",
    unit: "ISO 8601, UTC",
    means: "When it was",
    cell: ({ attempt }) => attempt.void?.at ?? null,
  },
  { name: "void_by", unit: "", means: "By whom", cell: ({ attempt }) => attempt.void?.by ?? null },
  { name: "void_reason", unit: "", means: "Why", cell: ({ attempt }) => attempt.void?.reason ?? null },
  {
    name: "corrects",
    unit: "",
    means: "The order of the attempt that this one took the place of",
    cell: ({ corrects }) => corrects,
  },
];

/** `attempts.csv`: everything that was entered, in the order of entry, also what no longer stands. */
export function attemptsSheet({ people, attempts }: SummaryDay): SummarySheet {
  const byId = new Map(people.map((who) => [who.athleteId, who]));
  const orders = new Map(attempts.map(({ id }, index) => [id, index + 1]));
  const lines = attempts.flatMap((attempt, index) => {
    const who = byId.get(attempt.athleteId);
    const corrects = orders.get(attempt.replaces ?? "") ?? null;
    return who === undefined ? [] : [{ order: index + 1, who, attempt, corrects }];
  });
  return sheetOf(
    "attempts.csv",
    "One attempt as it was entered; those that no longer stand among them.",
    columns,
    lines,
  );
}
