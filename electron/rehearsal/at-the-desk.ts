import type { RehearsalStage, RehearsedDay } from "../api/door/rehearsal-shapes.ts";
import type { DayToRehearse, Rehearse, SheetToRehearse } from "../api/door/rehearse.ts";
import { type Rehearsed, rehearseDay, type Sheets } from "./day.ts";
import { type Ground, momentOf, temporaryDesk } from "./desk.ts";
import { keptBackSheet } from "./files.ts";
import { countMarks } from "./marks.ts";
import { type RehearsedSheet, type TakenSheet, UnusableSheet } from "./sheets.ts";

/** Makes rehearsals for a running desk, each with its own store under `ground`, removed at its end. */
export function rehearser(ground: Ground, now: () => Date): Rehearse {
  return async function* rehearse(day) {
    const temporary = temporaryDesk(ground, momentOf(day.date, now()));
    try {
      yield* stages(temporary.desk, day);
    } finally {
      temporary.remove();
    }
  };
}

async function* stages(
  desk: Parameters<typeof rehearseDay>[0],
  day: DayToRehearse,
): AsyncGenerator<RehearsalStage, void> {
  const steps = rehearseDay(desk, sheetsOf(day), day);
  try {
    for (;;) {
      const step = await steps.next();
      if (step.done) return yield { stage: "done", rehearsed: told(step.value) };
      yield { stage: "working", ...step.value };
    }
  } catch (error) {
    if (!(error instanceof UnusableSheet)) throw error;
    const { sheet: file, sentence, form } = error;
    yield { stage: "refused", sheet: "roster", sentence, file, form };
  }
}

function sheetsOf({ rosters, past, results }: DayToRehearse): Sheets {
  return {
    rosters: rosters.map(sheetOf),
    past: past === null ? null : sheetOf(past),
    results: results === null ? null : sheetOf(results),
  };
}

function sheetOf({ name, bytes, said }: SheetToRehearse): RehearsedSheet {
  return { name, said, open: () => new Blob([new Uint8Array(bytes)]).stream() };
}

function told(rehearsed: Rehearsed): RehearsedDay {
  const { date, sheets, admitted, marks, bundle, foreseen: end } = rehearsed;
  return {
    date,
    sheets: sheets.map(toldSheet),
    admitted: admitted.admitted,
    askGuardian: admitted.askGuardian,
    marks: countMarks(marks),
    bundle: { rows: bundle.rows, held: bundle.held },
    foreseen: end === null ? null : { ends: end.ends, points: [...end.points] },
    keptBackSheet: { name: "kept-back.csv", text: keptBackSheet(sheets) },
  };
}

function toldSheet(sheet: TakenSheet): RehearsedDay["sheets"][number] {
  const { keptBack, keptBackRows, unusualRows, unknown, ...rest } = sheet;
  return {
    ...rest,
    // A sheet that is refused as a whole has no single rows that are not imported.
    keptBack: sheet.refused === null ? keptBack.length : 0,
    keptBackRows: [...keptBackRows],
    unusualRows: [...unusualRows],
    unknown: [...unknown],
  };
}
