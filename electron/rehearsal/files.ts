import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { type Sentence, sentence } from "../domain/words.ts";
import { writeWholeFiles } from "../files/whole.ts";
import { writeSheet } from "../sheets/write.ts";
import type { outputNames } from "./arguments.ts";
import type { Rehearsed } from "./day.ts";
import { marksSheet } from "./marks.ts";

/** The reason why the results can't be written. */
export class NotWritten extends Error {
  readonly sentence: Sentence;
  constructor(folder: string, cause: unknown) {
    super("not written", { cause });
    const code = cause instanceof Error && "code" in cause ? String(cause.code) : String(cause);
    this.sentence = sentence("rehearse.notWritten", { folder, code });
  }
}

type Files = Readonly<Record<(typeof outputNames)[number], string | Uint8Array>>;

/** Makes a sheet of all rows not imported, with sheet, line and reason. */
export function keptBackSheet(sheets: Rehearsed["sheets"]): string {
  const rows = sheets.flatMap(({ kind, keptBack }) =>
    keptBack.map(({ line, reason }) => [kind, line, reason]),
  );
  return writeSheet(["sheet", "line", "reason"], rows);
}

export function filesOf({ sheets, marks, board, bundle }: Rehearsed): Files {
  return {
    "marks.csv": marksSheet(marks),
    "rejected.csv": keptBackSheet(sheets),
    "board.json": `${JSON.stringify(board, null, 2)}\n`,
    "bundle.zip": bundle.bytes,
  };
}

/** Writes all files into the folder, which is made if missing, or none of them. @throws NotWritten */
export async function writeFiles(folder: string, files: Files): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
    await writeWholeFiles(
      Object.entries(files).map(([name, content]) => ({ path: join(folder, name), content })),
    );
  } catch (error) {
    throw new NotWritten(folder, error);
  }
}
