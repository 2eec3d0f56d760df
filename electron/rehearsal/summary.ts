import { say } from "../api/door/words.ts";
import { hoursOf } from "../domain/day/hours.ts";
import { type Sentence, sentence } from "../domain/words.ts";
import type { RehearsalArguments } from "./arguments.ts";
import type { Rehearsed } from "./day.ts";
import { countMarks } from "./marks.ts";
import type { TakenSheet } from "./sheets.ts";

/** A line of the summary; `level` is its indent. */
interface Line {
  readonly level: 0 | 1;
  readonly text: string;
}

/** Rows, names or columns that are listed; the rest become a count. */
const told = 5;

/** Writes a rehearsal's summary for the person at the terminal. */
export function summaryText(rehearsed: Rehearsed, { out }: RehearsalArguments, seconds: number): string {
  const { date, sheets, bundle } = rehearsed;
  const keptBack = sheets.reduce((sum, sheet) => sum + sheet.keptBack.length, 0);
  const lines = [
    line(sentence("rehearse.title", { date, seconds: seconds.toFixed(1) })),
    ...sheets.flatMap(sheetLines),
    ...peopleLines(rehearsed),
    ...markLines(rehearsed),
    line(sentence("rehearse.bundle", { count: bundle.rows, held: bundle.held })),
    ...foreseenLines(rehearsed),
    line(sentence("rehearse.written", { folder: out })),
    line(
      keptBack === 0 ? sentence("rehearse.allTaken") : sentence("rehearse.someKeptBack", { count: keptBack }),
    ),
  ];
  return lines.map(({ level, text }) => "  ".repeat(level) + text).join("\n");
}

function line(words: Sentence): Line {
  return { level: 0, text: say(words) };
}

function under(text: string): Line {
  return { level: 1, text };
}

function sheetLines({ kind, taken, keptBack, unusual, unusualRows, unknown }: TakenSheet): Line[] {
  const counts = { sheet: kind, count: taken, keptBack: keptBack.length };
  const reasons = keptBack.map(({ line, reason }) => rowLine(line, reason));
  const questions = unusualRows.map((row) => rowLine(row.line, say(row.sentence)));
  return [
    line(sentence("rehearse.sheet", counts)),
    ...shortened(reasons, keptBack.length),
    ...(unusual === 0 ? [] : [under(say(sentence("rehearse.unusual", { count: unusual })))]),
    ...shortened(questions, unusual),
    ...(unknown.length === 0
      ? []
      : [under(say(sentence("rehearse.unknown", { columns: unknown.join(", ") })))]),
  ];
}

function rowLine(row: number, text: string): string {
  return say(sentence("rehearse.row", { line: row, text }));
}

/** Returns the first few, and how many more of `count` there are. */
function shortened(texts: readonly string[], count: number): Line[] {
  const shown = texts.slice(0, told);
  const more = count - shown.length;
  return [...shown, ...(more > 0 ? [say(sentence("rehearse.more", { count: more }))] : [])].map(under);
}

function peopleLines({ admitted: { admitted, askGuardian } }: Rehearsed): Line[] {
  const names = askGuardian.map(({ name, league, number }) =>
    [name, league, number].filter((part) => part !== "").join(", "),
  );
  return [
    line(sentence("rehearse.checkedIn", { count: admitted })),
    ...(names.length === 0 ? [] : [line(sentence("rehearse.guardian", { count: names.length }))]),
    ...shortened(names, names.length),
  ];
}

function markLines({ marks }: Rehearsed): Line[] {
  const { open, ...complete } = countMarks(marks);
  return [
    line(sentence("rehearse.marks", { count: marks.length - open, ...complete })),
    ...(open === 0 ? [] : [line(sentence("rehearse.open", { count: open }))]),
  ];
}

function foreseenLines({ foreseen }: Rehearsed): Line[] {
  if (foreseen === null) return [];
  return [
    line(sentence("rehearse.ends", { ends: hoursOf(foreseen.ends) })),
    ...foreseen.points.map(({ at, from, until }) => {
      const values = { at: hoursOf(at), from: hoursOf(from), until: hoursOf(until) };
      return under(say(sentence("rehearse.foreseen", values)));
    }),
  ];
}
