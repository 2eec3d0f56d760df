import { randomUUID } from "node:crypto";
import { setImmediate } from "node:timers/promises";
import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { RowRefused } from "../../domain/tests/cells.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import { cellsOf, refuseMoreCells } from "../../sheets/cells.ts";
import type { Grid, SheetRow } from "../../sheets/grid.ts";
import type { Given } from "../../sheets/headers.ts";
import { readGrid } from "../../sheets/read-grid.ts";
import { matchReadings, readingColumns, readReading } from "../../sheets/readings.ts";
import { type Table, tableOf } from "../../sheets/table.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Study } from "../../store/tables/studies.ts";
import { addReading, type SeriesPlace, standingReadings } from "../../store/tables/study-readings.ts";
import type { Desk } from "../door/desk.ts";
import { initialsSchema } from "../door/said.ts";
import { allow } from "../door/trpc.ts";
import { choicesOf, choicesShape, type SheetChoices } from "../intake/choices.ts";
import { rememberedMapping, rememberMapping } from "../intake/forms.ts";
import { type KeptBackRow, keptBack } from "../intake/outcome.ts";
import { formOf, type ReadForm } from "../intake/preview.ts";
import { startRows } from "../intake/read.ts";
import { refuseMissing } from "../intake/sheet.ts";
import { uploads } from "../intake/uploads.ts";
import { type Beside, besideOf } from "./beside.ts";
import { requireSeries } from "./require.ts";
import { athleteOf, peopleOf, type StudyPeople } from "./who.ts";

const { mapping, headerLine, worksheet, league } = choicesShape;
const which = {
  ...{ uploadId: z.uuid(), studyId: z.uuid(), position: z.int().positive().max(4) },
  ...{ mapping, headerLine, worksheet, league },
};

/** A reading to add, and why it deserves a second look. */
interface NewLine {
  readonly line: number;
  readonly athleteId: number;
  readonly name: string;
  readonly value: number;
  readonly unusual: ReturnType<typeof readReading>["unusual"];
}

/** What a study's sheet comes to now. */
interface PlannedReadings {
  readonly lines: readonly NewLine[];
  /** Rows that say what is there already. */
  readonly known: number;
  readonly keptBack: readonly KeptBackRow[];
  readonly form: ReadForm;
}

/**
 * Returns what an uploaded sheet would add to a series, and how it was read; it changes nothing. `recall`: its columns are
 * read as in the last such sheet.
 */
export const lookAt = allow("organiser")
  .input(z.object({ ...which, recall: z.boolean().default(false) }))
  .query(async ({ ctx: { desk }, input: { recall, ...input } }) => {
    const sheet = await sheetIn(desk, input.uploadId, choicesOf(null, input));
    return shown(planReadings(desk.store.db, input, { ...sheet, recall }));
  });

/**
 * Imports all good rows of a sheet into a series, or none; the same sheet again changes nothing.
 * @throws Refusal `bad-input` where no column says who a row is about, or none has the readings
 */
export const takeSheet = allow("organiser")
  .input(z.object({ ...which, by: initialsSchema }))
  .mutation(async ({ ctx: { desk }, input }) => {
    const sheet = await sheetIn(desk, input.uploadId, choicesOf(null, input));
    const at = desk.now().toISOString();
    const { studyId, position, by } = input;
    return desk.store.write(["studies"], (db) => {
      const planned = planReadings(db, input, sheet);
      refuseMissing(planned.form);
      for (const { athleteId, value } of planned.lines) {
        const reading = { studyId, position, athleteId, value, by, reason: "", at };
        addReading(db, { ...reading, id: randomUUID(), source: "sheet" });
      }
      rememberMapping(db, kindOf(requireSeries(db, input).study), planned.form.headers, planned.form.mapping);
      return shown(planned);
    });
  });

/** The name under which it is remembered which column is which: a column of reps is none of times. */
function kindOf({ test }: Study): string {
  return `readings ${test}`;
}

/** Most rows of each kind that are shown; the counts are of all. */
const shownRows = 100;

function shown({ lines, known, keptBack: outside, form }: PlannedReadings) {
  const unusual = lines.flatMap(({ line, name, unusual: why }) =>
    why === null ? [] : [{ line, name, why }],
  );
  return {
    // As of results of a day, whose rows are about bibs or people of a league, and have no date.
    form: { kind: "results" as const, asksDateOrder: false, asked: [], ...formOf(form, readingColumns) },
    counts: { new: lines.length, known, keptBack: outside.length },
    unusual: unusual.slice(0, shownRows),
    keptBack: outside.slice(0, shownRows).map(({ line, reason, also = [] }) => ({
      line,
      reasons: [reason, ...also.map((each) => each.reason)],
    })),
  };
}

/** A sheet before it is known which column is which. */
interface StudySheet {
  readonly grid: Grid;
  readonly table: Table;
  readonly choices: SheetChoices;
  /** True where columns are read as in the last such sheet. */
  readonly recall: boolean;
}

/** @throws Refusal `bad-input` for a file that is no sheet; `not-found` once the upload is gone */
async function sheetIn(desk: Desk, uploadId: string, choices: SheetChoices): Promise<StudySheet> {
  const steps = readGrid(uploads.find(desk, uploadId).bytes, choices.worksheet);
  for (;;) {
    const step = await steps.next();
    if (step.done)
      return { grid: step.value, table: tableWithRows(step.value, choices), choices, recall: false };
    await setImmediate();
  }
}

function tableWithRows(grid: Grid, { headerLine }: SheetChoices): Table {
  const table = tableOf(grid, headerLine);
  if (table.rows.length + table.broken.length > 0) return table;
  throw new Refusal("bad-input", sentence("sheets.noRows"));
}

interface Planning {
  readonly study: Study;
  readonly people: StudyPeople;
  readonly position: number;
  /** What is said of all rows: their league. */
  readonly given: Given;
  readonly beside: Beside;
  /** Readings that count, of the store and of earlier rows. */
  readonly held: Map<number, number>;
}

/** Finds which column is which, and what is said of all rows. */
function readForm(
  db: ReadableDb,
  study: Study,
  { onlyLeague }: StudyPeople,
  { grid, table, choices, recall }: StudySheet,
): { form: ReadForm; given: Given } {
  const { headers, headerLine } = table;
  const mapping = recall ? rememberedMapping(db, kindOf(study), headers) : choices.mapping;
  const given = onlyLeague === null ? choices.given : { league: onlyLeague };
  const matched = matchReadings(headers, study.test, mapping, given);
  const { worksheets, worksheet, rows } = grid;
  const start = rows.slice(0, startRows);
  return { form: { headers, headerLine, worksheets, worksheet, start, matched, mapping }, given };
}

function planReadings(db: ReadableDb, which: SeriesPlace, sheet: StudySheet): PlannedReadings {
  const { study } = requireSeries(db, which);
  const people = peopleOf(db, study);
  const { table } = sheet;
  const { form, given } = readForm(db, study, people, sheet);
  const { matched, headers } = form;
  if (matched.missing.length > 0) return { lines: [], known: 0, keptBack: [], form };
  const own = standingReadings(db, which.studyId).filter(({ position }) => position === which.position);
  const held = new Map(own.map(({ athleteId, value }) => [athleteId, value]));
  const planning = { study, people, position: which.position, given, beside: besideOf(db, study), held };
  const outcomes = table.rows.map((row) => outcomeOf(planning, row, matched.columns, headers.length));
  const broken = table.broken.map(({ line, reason }): KeptBackRow => ({ line, field: null, reason }));
  const outside = outcomes.filter((each): each is KeptBackRow => each !== "known" && "reason" in each);
  return {
    lines: outcomes.filter((each): each is NewLine => each !== "known" && "value" in each),
    known: outcomes.filter((each) => each === "known").length,
    keptBack: [...outside, ...broken].sort((a, b) => a.line - b.line),
    form,
  };
}

function outcomeOf(
  planning: Planning,
  row: SheetRow,
  columns: ReadonlyMap<string, number>,
  width: number,
): NewLine | KeptBackRow | "known" {
  try {
    return planRow(planning, row, columns, width);
  } catch (error) {
    if (error instanceof RowRefused) return keptBack(row.line, error);
    throw error;
  }
}

function planRow(
  { study, people, position, given, beside, held }: Planning,
  { line, cells }: SheetRow,
  columns: ReadonlyMap<string, number>,
  width: number,
): NewLine | "known" {
  refuseMoreCells(cells, width);
  const { who, value, unusual } = readReading(cellsOf(columns, cells, given), study.test);
  const { id: athleteId, name } = athleteOf(people, who);
  const before = held.get(athleteId);
  if (before === value) return "known";
  if (before !== undefined) {
    const { number } = protocolOf(study.test).write(before, "cm");
    throw new RowRefused("mark", sentence("study.twice", { name, held: number }));
  }
  const athlete = { id: athleteId, name };
  const whyNot = beside.whyNot(athlete);
  if (whyNot !== null) throw new RowRefused("mark", whyNot);
  held.set(athleteId, value);
  return { line, athleteId, name, value, unusual: unusual ?? beside.ask(athlete, { position, value }, "cm") };
}
