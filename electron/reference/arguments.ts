import { statSync } from "node:fs";
import { resolve } from "node:path";
import { parseArgs } from "node:util";
import { type Sentence, sentence } from "../domain/words.ts";

/** The input of a merge: absolute paths of a folder with bundles and of the sheet to write. */
export interface MergeArguments {
  readonly folder: string;
  readonly out: string;
}

/** The reason why nothing can be merged, in one line. */
export class NothingToMerge extends Error {
  readonly sentence: Sentence;
  constructor(why: Sentence) {
    super(why.key);
    this.sentence = why;
  }
}

/** Reads the command line, with paths relative to `from`; null for the usage only. @throws NothingToMerge */
export function readArguments(args: readonly string[], from: string): MergeArguments | null {
  const options = { out: { type: "string" }, help: { type: "boolean" } } as const;
  const { values, positionals } = parsed(() =>
    parseArgs({ args: [...args], options, allowPositionals: true, strict: true }),
  );
  if (values.help === true) return null;
  const [folder, ...more] = positionals;
  const [stray] = more;
  if (stray !== undefined) throw new NothingToMerge(sentence("references.stray", { text: stray }));
  if (folder === undefined) throw new NothingToMerge(sentence("references.noFolder"));
  if (values.out === undefined || values.out === "") throw new NothingToMerge(sentence("references.noOut"));
  const wanted = { folder: resolve(from, folder), out: resolve(from, values.out) };
  if (!isFolder(wanted.folder))
    throw new NothingToMerge(sentence("references.notFolder", { path: wanted.folder }));
  if (isFolder(wanted.out))
    throw new NothingToMerge(sentence("references.outIsFolder", { path: wanted.out }));
  if (/\.zip$/i.test(wanted.out)) throw new NothingToMerge(sentence("references.outIsZip"));
  return wanted;
}

/** Turns Node's English error on an unknown option, or one without its value, into one line above the usage. */
function parsed<Result>(parse: () => Result): Result {
  try {
    return parse();
  } catch (error) {
    const text = error instanceof Error ? error.message.split(/[.\n]/)[0] : String(error);
    throw new NothingToMerge(sentence("references.options", { text: text ?? "" }));
  }
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}
