import Papa from "papaparse";
import { say } from "../api/door/words.ts";
import type { appRouter } from "../api/router.ts";
import { Refusal } from "../domain/refusal.ts";
import type { Sentence } from "../domain/words.ts";
import { restored } from "../sheets/formula.ts";
import type { SheetKindName } from "../sheets/headers.ts";

export type Organiser = ReturnType<typeof appRouter.createCaller>;
type OctetInput = Parameters<Organiser["intake"]["upload"]>[0];
type KeptBackRow = Awaited<ReturnType<Organiser["intake"]["take"]>>["keptBack"][number];

/** A sheet to rehearse with. */
export interface RehearsedSheet {
  /** What to call it when it can't be used: its path, or its kind. */
  readonly name: string;
  /** Its bytes from the beginning. */
  open(): ReadableStream;
}

/** A sheet that can't be used at all, and why. */
export class UnusableSheet extends Error {
  /** As in {@link RehearsedSheet}. */
  readonly sheet: string;
  readonly sentence: Sentence;
  constructor(sheet: string, why: Sentence) {
    super(why.key);
    this.sheet = sheet;
    this.sentence = why;
  }
}

/** A sheet that was brought to the desk. */
interface Brought {
  readonly kind: SheetKindName;
  readonly name: string;
  readonly uploadId: string;
}

/** What became of a sheet. */
export interface TakenSheet {
  readonly kind: SheetKindName;
  readonly taken: number;
  readonly keptBack: readonly { readonly line: number; readonly reason: string }[];
  /** The first of them as a screen shows them. */
  readonly keptBackRows: readonly KeptBackRow[];
  /** How many rows a station would have asked about, and the first of them. */
  readonly unusual: number;
  readonly unusualRows: readonly { readonly line: number; readonly sentence: Sentence }[];
  /** Headers of columns that were passed over. */
  readonly unknown: readonly string[];
  /** Why the sheet as a whole could not be used; null when it could. */
  readonly refused: Sentence | null;
}

/** Takes a sheet in, as the sheets screen does. @throws UnusableSheet */
export async function takeIn(
  organiser: Organiser,
  kind: SheetKindName,
  sheet: RehearsedSheet,
): Promise<TakenSheet> {
  return take(organiser, await bring(organiser, kind, sheet));
}

/** The same, but a sheet that can't be used is told like a row that is kept back: the rest of the day is still news. */
export async function tryToTakeIn(
  organiser: Organiser,
  kind: SheetKindName,
  sheet: RehearsedSheet,
): Promise<TakenSheet> {
  try {
    return await takeIn(organiser, kind, sheet);
  } catch (error) {
    if (error instanceof UnusableSheet) return nothingOf(kind, error.sentence);
    throw error;
  }
}

function nothingOf(kind: SheetKindName, refused: Sentence): TakenSheet {
  const keptBack = [{ line: 1, reason: say(refused) }];
  const none = { taken: 0, keptBackRows: [], unusual: 0, unusualRows: [], unknown: [] };
  return { kind, ...none, keptBack, refused };
}

async function bring(organiser: Organiser, kind: SheetKindName, sheet: RehearsedSheet): Promise<Brought> {
  const { name } = sheet;
  // Over the door the bytes of a request arrive as a stream; the types name only what a page may send.
  const { uploadId } = await usable(name, organiser.intake.upload(sheet.open() as unknown as OctetInput));
  return { kind, name, uploadId };
}

/** Looks at a sheet, then takes it in. */
async function take(organiser: Organiser, { kind, name, uploadId }: Brought): Promise<TakenSheet> {
  const preview = await look(organiser, { kind, name, uploadId });
  const { counts, keptBack } = await usable(name, organiser.intake.take({ uploadId, kind }));
  const unusualRows = preview.rows.flatMap(({ line, unusual }) =>
    unusual === null ? [] : { line, sentence: asSentence(unusual) },
  );
  return {
    kind,
    taken: counts.new + counts.changed + counts.known,
    keptBack: keptBackIn((await organiser.intake.keptBackSheet({ uploadId })).text),
    keptBackRows: keptBack,
    unusual: counts.unusual,
    unusualRows,
    unknown: preview.unknown,
    refused: null,
  };
}

async function look(organiser: Organiser, { kind, name, uploadId }: Brought) {
  for await (const step of await organiser.intake.read({ uploadId, kind })) {
    if (step.stage === "preview") return step.preview;
    if (step.stage === "refused") throw new UnusableSheet(name, asSentence(step.sentence));
  }
  throw new Error(`Reading ${name} ended with neither a preview nor a refusal.`);
}

/** A sentence as the door hands it out. */
function asSentence({ key, values }: Pick<Sentence, "key"> & { values?: Sentence["values"] | undefined }) {
  return values === undefined ? { key } : { key, values };
}

/** What the desk refuses about a sheet is told with its name; everything else is a fault. */
async function usable<Result>(name: string, work: Promise<Result>): Promise<Result> {
  try {
    return await work;
  } catch (error) {
    if (error instanceof Error && error.cause instanceof Refusal) {
      throw new UnusableSheet(name, error.cause.sentence);
    }
    throw error;
  }
}

/** Line and reason of each row of a sheet of kept-back rows: the last two of its headed columns. */
function keptBackIn(text: string): { line: number; reason: string }[] {
  const [headers = [], ...rows] = Papa.parse<string[]>(text, { skipEmptyLines: true }).data;
  return rows.map((row) => ({
    line: Number(row[headers.length - 2]),
    reason: restored(row[headers.length - 1] ?? ""),
  }));
}
