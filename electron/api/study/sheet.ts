import { randomUUID } from "node:crypto";
import { setImmediate } from "node:timers/promises";
import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { RowRefused } from "../../domain/tests/cells.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import { cellsOf, refuseMoreCells } from "../../sheets/cells.ts";
import type { SheetRow } from "../../sheets/grid.ts";
import { readGrid } from "../../sheets/read-grid.ts";
import { matchReadings, readReading } from "../../sheets/readings.ts";
import { type Table, tableOf } from "../../sheets/table.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Study } from "../../store/tables/studies.ts";
import { addReading, type SeriesPlace, standingReadings } from "../../store/tables/study-readings.ts";
import type { Desk } from "../door/desk.ts";
import { initialsSchema } from "../door/said.ts";
import { allow } from "../door/trpc.ts";
import { type KeptBackRow, keptBack } from "../intake/outcome.ts";
import { uploads } from "../intake/uploads.ts";
import { type Beside, besideOf } from "./beside.ts";
import { requireSeries } from "./require.ts";
import { athleteOf, peopleOf, type StudyPeople } from "./who.ts";

const which = { uploadId: z.uuid(), studyId: z.uuid(), position: z.int().positive().max(4) };

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
}

/** Returns what an uploaded sheet would add to a series; it changes nothing. */
export const lookAt = allow("organiser")
  .input(z.object(which))
  .query(async ({ ctx: { desk }, input }) => {
    const table = await tableIn(desk, input.uploadId);
    return shown(planReadings(desk.store.db, input, table));
  });

/** Imports all good rows of a sheet into a series, or none; the same sheet again changes nothing. */
export const takeSheet = allow("organiser")
  .input(z.object({ ...which, by: initialsSchema }))
  .mutation(async ({ ctx: { desk }, input }) => {
    const table = await tableIn(desk, input.uploadId);
    const at = desk.now().toISOString();
    const { studyId, position, by } = input;
    return desk.store.write(["studies"], (db) => {
      const planned = planReadings(db, input, table);
      for (const { athleteId, value } of planned.lines) {
        const reading = { studyId, position, athleteId, value, by, reason: "", at };
        addReading(db, { ...reading, id: randomUUID(), source: "sheet" });
      }
      return shown(planned);
    });
  });

/** Most rows of each kind that are shown; the counts are of all. */
const shownRows = 100;

function shown({ lines, known, keptBack: outside }: PlannedReadings) {
  const unusual = lines.flatMap(({ line, name, unusual: why }) =>
    why === null ? [] : [{ line, name, why }],
  );
  return {
    counts: { new: lines.length, known, keptBack: outside.length },
    unusual: unusual.slice(0, shownRows),
    keptBack: outside.slice(0, shownRows).map(({ line, reason, also = [] }) => ({
      line,
      reasons: [reason, ...also.map((each) => each.reason)],
    })),
  };
}

/** @throws Refusal `bad-input` for a file that is no sheet; `not-found` once the upload is gone */
async function tableIn(desk: Desk, uploadId: string): Promise<Table> {
  const steps = readGrid(uploads.find(desk, uploadId).bytes, null);
  for (;;) {
    const step = await steps.next();
    if (step.done) return tableWithRows(tableOf(step.value));
    await setImmediate();
  }
}

function tableWithRows(table: Table): Table {
  if (table.rows.length + table.broken.length > 0) return table;
  throw new Refusal("bad-input", sentence("sheets.noRows"));
}

interface Planning {
  readonly study: Study;
  readonly people: StudyPeople;
  readonly position: number;
  readonly beside: Beside;
  /** Readings that count, of the store and of earlier rows. */
  readonly held: Map<number, number>;
}

function planReadings(db: ReadableDb, which: SeriesPlace, table: Table): PlannedReadings {
  const { study } = requireSeries(db, which);
  const people = peopleOf(db, study);
  const own = standingReadings(db, which.studyId).filter(({ position }) => position === which.position);
  const held = new Map(own.map(({ athleteId, value }) => [athleteId, value]));
  const planning = { study, people, position: which.position, beside: besideOf(db, study), held };
  const columns = matchReadings(table.headers, study.test);
  const outcomes = table.rows.map((row) => outcomeOf(planning, row, columns, table.headers.length));
  const broken = table.broken.map(({ line, reason }): KeptBackRow => ({ line, field: null, reason }));
  const outside = outcomes.filter((each): each is KeptBackRow => each !== "known" && "reason" in each);
  return {
    lines: outcomes.filter((each): each is NewLine => each !== "known" && "value" in each),
    known: outcomes.filter((each) => each === "known").length,
    keptBack: [...outside, ...broken].sort((a, b) => a.line - b.line),
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
  { study, people, position, beside, held }: Planning,
  { line, cells }: SheetRow,
  columns: ReadonlyMap<string, number>,
  width: number,
): NewLine | "known" {
  refuseMoreCells(cells, width);
  const given = people.onlyLeague === null ? {} : { league: people.onlyLeague };
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
