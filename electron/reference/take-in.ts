import { join } from "node:path";
import { readBundle } from "../api/reference/read.ts";
import type { Bundle } from "../domain/reference/bundle.ts";
import { refused } from "../domain/reference/refused.ts";
import { readHandIn } from "../domain/reference-table/hand-in.ts";
import { type Sentence, sentence } from "../domain/words.ts";
import { noQuarter } from "./batches.ts";
import { filesIn, type Opened, reasonOf, type Sent, stampOf, withFile } from "./folder.ts";
import type { Kept, Looked } from "./kept.ts";

/** How far a merge is, and what it does not use. */
export interface Telling {
  keptBack(name: string, why: Sentence): void;
  /** So many of all files are done; `kept`: so far nothing has to be read again. */
  progress(done: number, all: number, kept: boolean): void;
}

/** A bundle that counts, or what somebody handed in. */
export interface Source {
  readonly bundle: string;
  /** By which its marks are kept. */
  readonly number: number;
  readonly name: string;
  readonly subfolder: string | null;
  readonly isHandedIn: boolean;
  /** When its file was last changed, as in its stamp. */
  readonly changed: string;
}

/** How the names of bundles end, and those of what people hand in. */
export const endings = { bundle: ".zip", handIn: ".json" } as const;

/** Files after which a batch is written. */
const batchSize = 500;

/**
 * Looks through a folder, file by file and by name, so that only one is in memory; no content of one can stop the
 * others. What is kept of a file that has not changed is not read again. A bundle that came already, in any zip, counts
 * once, and so does what somebody handed in. Returns what counts.
 * @param wanted how the names of files end that are looked at
 */
export async function takeIn(
  folder: string,
  wanted: readonly string[],
  kept: Kept,
  telling: Telling,
): Promise<Source[]> {
  const files = await filesIn(folder, wanted);
  const sources = new Map<string, Source>();
  for (const [index, file] of files.entries()) {
    const why = await takeFile(folder, file, kept, sources);
    if (why !== null) telling.keptBack(file.name, why);
    const isFull = kept.waiting >= batchSize;
    if (isFull) await kept.flush();
    telling.progress(index + 1, files.length, isFull);
  }
  await kept.flush();
  await kept.close();
  return [...sources.values()];
}

/** Returns the reason why a file is not used; null when it is. */
async function takeFile(
  folder: string,
  { name, subfolder }: Sent,
  kept: Kept,
  sources: Map<string, Source>,
): Promise<Sentence | null> {
  let looked: Looked;
  try {
    looked =
      unchanged(folder, name, kept) ?? (await withFile(join(folder, name), (file) => look(name, file, kept)));
  } catch (error) {
    return reasonOf(error);
  }
  const { bundle, number, refusal, changed } = looked;
  if (bundle === null || number === null) return refusal;
  const first = sources.get(bundle);
  if (first !== undefined) return sentence("references.again", { name: first.name });
  sources.set(bundle, { bundle, number, name, subfolder, isHandedIn: isHandIn(name), changed });
  return null;
}

/** What is known of a file that is as it was; undefined: it has to be read. @throws the system's error */
function unchanged(folder: string, name: string, kept: Kept): Looked | undefined {
  const known = kept.find(name);
  if (known === undefined) return undefined;
  const now = stampOf(join(folder, name));
  return now?.bytes === known.bytes && now.changed === known.changed ? known : undefined;
}

/** Looks at a file. @throws the system's error */
async function look(name: string, { stamp, read }: Opened, kept: Kept): Promise<Looked> {
  try {
    const { id, marks } = (isHandIn(name) ? handedIn : bundled)(await read());
    return kept.add({ name, ...stamp, bundle: id, refusal: null }, marks);
  } catch (error) {
    // What the system could not read may be readable next time, and is not kept.
    if (error instanceof Error && "syscall" in error) throw error;
    return kept.add({ name, ...stamp, bundle: null, refusal: reasonOf(error) }, []);
  }
}

function isHandIn(name: string): boolean {
  return name.toLowerCase().endsWith(endings.handIn);
}

/** What a file tells, by which it is known again. */
interface Told {
  readonly id: string;
  readonly marks: Bundle["marks"];
}

/** @throws Refusal `bad-input`, also for what is no result of real people, or was not meant to be shared */
function bundled(bytes: Uint8Array): Told {
  const { rehearsal, demo, contentSha256, marks } = readBundle(bytes);
  if (rehearsal) throw refused(sentence("reference.rehearsal"));
  if (demo) throw refused(sentence("reference.demo"));
  return { id: contentSha256, marks };
}

/** @throws Refusal `bad-input` */
function handedIn(bytes: Uint8Array): Told {
  const { id, category, ageBand, results } = readHandIn(textIn(bytes));
  return { id, marks: results.map((each) => ({ ...each, category, ageBand, quarter: noQuarter, count: 1 })) };
}

/** @throws Refusal `bad-input` when it is no UTF-8 */
function textIn(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw refused(sentence("handIn.other"));
  }
}
