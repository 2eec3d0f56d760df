import { createReadStream } from "node:fs";
import { access, constants, stat } from "node:fs/promises";
import { Readable } from "node:stream";
import { sentence } from "../domain/words.ts";
import { type RehearsedSheet, UnusableSheet } from "./sheets.ts";

/** Opens a file as a sheet. @throws UnusableSheet when there is no readable file of that name. */
export async function fileSheet(path: string): Promise<RehearsedSheet> {
  await requireFile(path);
  return { name: path, open: () => Readable.toWeb(createReadStream(path)) as ReadableStream };
}

async function requireFile(path: string): Promise<void> {
  const found = await stat(path).catch(() => null);
  if (found === null) throw new UnusableSheet(path, sentence("rehearse.noFile"));
  if (found.isDirectory()) throw new UnusableSheet(path, sentence("rehearse.folder"));
  const readable = await access(path, constants.R_OK).then(
    () => true,
    () => false,
  );
  if (!readable) throw new UnusableSheet(path, sentence("rehearse.noAccess"));
}
