import Papa from "papaparse";
import type { SheetForm } from "../api/door/rehearsal-shapes.ts";
import type { SaidOfSheet } from "../api/door/rehearse.ts";
import { say } from "../api/door/words.ts";
import type { appRouter } from "../api/router.ts";
import { Refusal } from "../domain/refusal.ts";
import type { Sentence } from "../domain/words.ts";
import { restored } from "../sheets/formula.ts";
import type { SheetKindName } from "../sheets/headers.ts";
import { separatorOf } from "../sheets/text.ts";

export type Organiser = ReturnType<typeof appRouter.createCaller>;
type OctetInput = Parameters<Organiser["intake"]["upload"]>[0];
type KeptBackRow = Awaited<ReturnType<Organiser["intake"]["take"]>>["keptBack"][number];

/** A sheet to rehearse with. */
export interface RehearsedSheet {
  /** The name in error messages: its path, or its kind. */
  readonly name: string;
  /** Returns its bytes from the beginning. */
  open(): ReadableStream;
  /** What a person said of it as a whole; left out: nothing. */
  readonly said?: SaidOfSheet;
}

/** A wholly unusable sheet, and the reason. */
export class UnusableSheet extends Error {
  /** See {@link RehearsedSheet}. */
  readonly sheet: string;
  readonly sentence: Sentence;
  /** How it was read, as far as it was. */
  readonly form: SheetForm | null;
  constructor(sheet: string, why: Sentence, form: SheetForm | null = null) {
    super(why.key);
    this.sheet = sheet;
    this.sentence = why;
    this.form = form;
  }
}

/** An uploaded sheet. */
interface Brought {
  readonly kind: SheetKindName;
  readonly name: string;
  readonly uploadId: string;
  readonly said: SaidOfSheet;
}

/** The result for one sheet. */
export interface TakenSheet {
  readonly kind: SheetKindName;
  /** The sheet's name. */
  readonly file: string;
  /** How it was read; null where it could not be. */
  readonly form: SheetForm | null;
  /** True for results that the rehearsal made up itself. */
  readonly invented: boolean;
  readonly taken: number;
  readonly keptBack: readonly { readonly line: number; readonly reason: string }[];
  /** The first of them in a screen's form. */
  readonly keptBackRows: readonly KeptBackRow[];
  /** Number of rows that a station would have questioned, and the first of them. */
  readonly unusual: number;
  readonly unusualRows: readonly { readonly line: number; readonly sentence: Sentence }[];
  /** Headers of ignored columns. */
  readonly unknown: readonly string[];
  /** The reason why the whole sheet was unusable; null if it was usable. */
  readonly refused: Sentence | null;
}

/** Imports a sheet as the sheets screen does. @throws UnusableSheet */
export async function takeIn(
  organiser: Organiser,
  kind: SheetKindName,
  sheet: RehearsedSheet,
): Promise<TakenSheet> {
  return take(organiser, await bring(organiser, kind, sheet));
}

/** Imports a sheet, but reports an unusable one like a row that is not imported: the rest of the day is still news. */
export async function tryToTakeIn(
  organiser: Organiser,
  kind: SheetKindName,
  sheet: RehearsedSheet,
): Promise<TakenSheet> {
  try {
    return await takeIn(organiser, kind, sheet);
  } catch (error) {
    if (error instanceof UnusableSheet) return nothingOf(kind, error);
    throw error;
  }
}

function nothingOf(kind: SheetKindName, { sheet, sentence: refused, form }: UnusableSheet): TakenSheet {
  const keptBack = [{ line: 1, reason: say(refused) }];
  const none = { taken: 0, keptBackRows: [], unusual: 0, unusualRows: [], unknown: [] };
  return { kind, file: sheet, form, invented: false, ...none, keptBack, refused };
}

async function bring(organiser: Organiser, kind: SheetKindName, sheet: RehearsedSheet): Promise<Brought> {
  const { name } = sheet;
  // At the API a request's bytes arrive as a stream; the types only name what a page may send.
  const { uploadId } = await usable(name, organiser.intake.upload(sheet.open() as unknown as OctetInput));
  return { kind, name, uploadId, said: sheet.said ?? {} };
}

/** Previews a sheet, then imports it. */
async function take(organiser: Organiser, brought: Brought): Promise<TakenSheet> {
  const { kind, name, uploadId, said } = brought;
  const preview = await look(organiser, brought);
  const form = formOf(preview);
  const taken = organiser.intake.take({ uploadId, kind, ...said, unanswered: "keepBack" });
  const { counts, keptBack } = await usable(name, taken, form);
  const unusualRows = preview.rows.flatMap(({ line, unusual }) =>
    unusual === null ? [] : { line, sentence: asSentence(unusual) },
  );
  return {
    ...{ kind, file: name, form, invented: false },
    taken: counts.new + counts.changed + counts.known,
    keptBack: keptBackIn((await organiser.intake.keptBackSheet({ uploadId })).text),
    keptBackRows: keptBack,
    unusual: counts.unusual,
    unusualRows,
    unknown: preview.unknown,
    refused: null,
  };
}

function formOf({ kind, missing, fields, headerLine, start, ...preview }: SheetForm): SheetForm {
  const { worksheets, worksheet, asksDateOrder, asked } = preview;
  return { kind, missing, fields, headerLine, start, worksheets, worksheet, asksDateOrder, asked };
}

async function look(organiser: Organiser, { kind, name, uploadId, said }: Brought) {
  for await (const step of await organiser.intake.read({ uploadId, kind, ...said })) {
    if (step.stage === "preview") return step.preview;
    if (step.stage === "refused") throw new UnusableSheet(name, asSentence(step.sentence));
  }
  throw new Error(`Reading ${name} ended with neither a preview nor a refusal.`);
}

/** Returns a sentence in the domain's form. */
function asSentence({ key, values }: Pick<Sentence, "key"> & { values?: Sentence["values"] | undefined }) {
  return values === undefined ? { key } : { key, values };
}

/** Adds the sheet's name to a refusal by the desk; everything else is a fault. */
async function usable<Result>(
  name: string,
  work: Promise<Result>,
  form: SheetForm | null = null,
): Promise<Result> {
  try {
    return await work;
  } catch (error) {
    if (error instanceof Error && error.cause instanceof Refusal) {
      throw new UnusableSheet(name, error.cause.sentence, form);
    }
    throw error;
  }
}

/** Returns line and reason of each row of a sheet of rows not imported: its last two headed columns. */
function keptBackIn(text: string): { line: number; reason: string }[] {
  const [headers = [], ...rows] = Papa.parse<string[]>(text, {
    delimiter: separatorOf(text, "\r\n"),
    skipEmptyLines: true,
  }).data;
  return rows.map((row) => ({
    line: Number(row[headers.length - 2]),
    reason: restored(row[headers.length - 1] ?? ""),
  }));
}
