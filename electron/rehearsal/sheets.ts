import { createReadStream } from "node:fs";
import { access, constants, stat } from "node:fs/promises";
import { Readable } from "node:stream";
import Papa from "papaparse";
import type { appRouter } from "../api/router.ts";
import { restored } from "../api/sheets/formula.ts";
import type { SheetKindName } from "../api/sheets/headers.ts";
import { say } from "../api/words.ts";
import { Refusal } from "../domain/refusal.ts";
import { type Sentence, sentence } from "../domain/words.ts";

export type Organiser = ReturnType<typeof appRouter.createCaller>;
type OctetInput = Parameters<Organiser["intake"]["upload"]>[0];

/** A sheet that can't be used at all, and why. */
export class UnusableSheet extends Error {
  readonly path: string;
  readonly sentence: Sentence;
  constructor(path: string, why: Sentence) {
    super(why.key);
    this.path = path;
    this.sentence = why;
  }
}

/** A sheet that was brought to the desk. */
interface Brought {
  readonly kind: SheetKindName;
  readonly path: string;
  readonly uploadId: string;
}

/** What became of a sheet. */
export interface TakenSheet {
  readonly kind: SheetKindName;
  readonly taken: number;
  readonly keptBack: readonly { readonly line: number; readonly reason: string }[];
  /** How many rows a station would have asked about, and the first of them. */
  readonly unusual: number;
  readonly unusualRows: readonly { readonly line: number; readonly sentence: Sentence }[];
  /** Headers of columns that were passed over. */
  readonly unknown: readonly string[];
}

/** Takes a sheet in, as the sheets screen does. @throws UnusableSheet */
export async function takeIn(organiser: Organiser, kind: SheetKindName, path: string): Promise<TakenSheet> {
  return take(organiser, await bring(organiser, kind, path));
}

/** The same, but a sheet that can't be used is told like a row that is kept back: the rest of the day is still news. */
export async function tryToTakeIn(
  organiser: Organiser,
  kind: SheetKindName,
  path: string,
): Promise<TakenSheet> {
  try {
    return await takeIn(organiser, kind, path);
  } catch (error) {
    if (error instanceof UnusableSheet) return nothingOf(kind, error);
    throw error;
  }
}

function nothingOf(kind: SheetKindName, { sentence: why }: UnusableSheet): TakenSheet {
  const keptBack = [{ line: 1, reason: say(why) }];
  return { kind, taken: 0, keptBack, unusual: 0, unusualRows: [], unknown: [] };
}

async function bring(organiser: Organiser, kind: SheetKindName, path: string): Promise<Brought> {
  const stream = Readable.toWeb(createReadStream(path));
  // Over the door the bytes of a request arrive as a stream; the types name only what a page may send.
  const { uploadId } = await usable(path, organiser.intake.upload(stream as unknown as OctetInput));
  return { kind, path, uploadId };
}

/** @throws UnusableSheet when there is no file of that name to read. */
export async function requireFile(path: string): Promise<void> {
  const found = await stat(path).catch(() => null);
  if (found === null) throw new UnusableSheet(path, sentence("rehearse.noFile"));
  if (found.isDirectory()) throw new UnusableSheet(path, sentence("rehearse.folder"));
  const readable = await access(path, constants.R_OK).then(
    () => true,
    () => false,
  );
  if (!readable) throw new UnusableSheet(path, sentence("rehearse.noAccess"));
}

/** Looks at a sheet, then takes it in. */
async function take(organiser: Organiser, { kind, path, uploadId }: Brought): Promise<TakenSheet> {
  const preview = await look(organiser, { kind, path, uploadId });
  const { counts } = await usable(path, organiser.intake.take({ uploadId, kind }));
  const unusualRows = preview.rows.flatMap(({ line, unusual }) =>
    unusual === null ? [] : { line, sentence: asSentence(unusual) },
  );
  return {
    kind,
    taken: counts.new + counts.changed + counts.known,
    keptBack: keptBackIn((await organiser.intake.keptBackSheet({ uploadId })).text),
    unusual: counts.unusual,
    unusualRows,
    unknown: preview.unknown,
  };
}

async function look(organiser: Organiser, { kind, path, uploadId }: Brought) {
  for await (const step of await organiser.intake.read({ uploadId, kind })) {
    if (step.stage === "preview") return step.preview;
    if (step.stage === "refused") throw new UnusableSheet(path, asSentence(step.sentence));
  }
  throw new Error(`Reading ${path} ended with neither a preview nor a refusal.`);
}

/** A sentence as the door hands it out. */
function asSentence({ key, values }: Pick<Sentence, "key"> & { values?: Sentence["values"] | undefined }) {
  return values === undefined ? { key } : { key, values };
}

/** What the desk refuses about a sheet is told with its path; everything else is a fault. */
async function usable<Result>(path: string, work: Promise<Result>): Promise<Result> {
  try {
    return await work;
  } catch (error) {
    if (error instanceof Error && error.cause instanceof Refusal) {
      throw new UnusableSheet(path, error.cause.sentence);
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
