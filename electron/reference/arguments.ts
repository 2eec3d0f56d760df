import { existsSync, statSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { parseArgs } from "node:util";
import { shown } from "../domain/reference/refused.ts";
import { tableLimits } from "../domain/reference-table/table.ts";
import { sentence } from "../domain/words.ts";
import { readKeyFile } from "./keys.ts";
import type { MergeArguments, Signing } from "./merge.ts";
import { WordsNotUnderstood } from "./nothing.ts";

/** What the command is asked to do. */
export type Wanted =
  | { readonly what: "usage" }
  | { readonly what: "new key"; readonly path: string }
  | { readonly what: "merge"; readonly merge: MergeArguments };

const options = {
  out: { type: "string" },
  kept: { type: "string" },
  key: { type: "string" },
  publisher: { type: "string" },
  valid: { type: "string" },
  page: { type: "string" },
  "new-key": { type: "string" },
  help: { type: "boolean" },
} as const;

/** Years for which a table may be brought in, unless `--valid` says others, and the most that it may say. */
const years = { usual: "2", most: 10 };

/** Reads the command line, with paths relative to `from`; `today` by ISO 8601. @throws NothingToMerge */
export function readArguments(args: readonly string[], from: string, today: string): Wanted {
  const { values, positionals } = parsed(() =>
    parseArgs({ args: [...args], options, allowPositionals: true, strict: true }),
  );
  if (values.help === true) return { what: "usage" };
  if (values["new-key"] !== undefined) return { what: "new key", path: newKeyPath(values["new-key"], from) };
  const [folder, ...more] = positionals;
  const [stray] = more;
  if (stray !== undefined) throw new WordsNotUnderstood(sentence("references.stray", { text: stray }));
  if (folder === undefined) throw new WordsNotUnderstood(sentence("references.noFolder"));
  if (values.out === undefined || values.out === "")
    throw new WordsNotUnderstood(sentence("references.noOut"));
  const paths = { folder: resolve(from, folder), out: resolve(from, values.out) };
  if (!isFolder(paths.folder))
    throw new WordsNotUnderstood(sentence("references.notFolder", { path: paths.folder }));
  if (isFolder(paths.out))
    throw new WordsNotUnderstood(sentence("references.outIsFolder", { path: paths.out }));
  const isTable = /\.zip$/i.test(paths.out);
  if (isTable && isInside(paths.out, paths.folder))
    throw new WordsNotUnderstood(sentence("references.outInside", { path: paths.folder }));
  const { key, publisher, valid, page } = values;
  if (!isTable && [key, publisher, valid, page].some((value) => value !== undefined))
    throw new WordsNotUnderstood(sentence("references.sheetUnsigned"));
  const kept = values.kept === undefined || values.kept === "" ? null : resolve(from, values.kept);
  const signing = isTable ? signingOf({ key, publisher, valid }, from, today) : null;
  return {
    what: "merge",
    merge: { ...paths, kept, signing, page: page === undefined ? null : pageFolder(page, from) },
  };
}

function pageFolder(path: string, from: string): string {
  const wanted = resolve(from, path);
  if (path === "" || (existsSync(wanted) && !isFolder(wanted)))
    throw new WordsNotUnderstood(sentence("references.noPageFolder"));
  return wanted;
}

function newKeyPath(path: string, from: string): string {
  if (path === "") throw new WordsNotUnderstood(sentence("references.noKeyPath"));
  const wanted = resolve(from, path);
  if (!isFolder(dirname(wanted)))
    throw new WordsNotUnderstood(sentence("references.notFolder", { path: dirname(wanted) }));
  return wanted;
}

interface SigningValues {
  readonly key: string | undefined;
  readonly publisher: string | undefined;
  readonly valid: string | undefined;
}

function signingOf(
  { key, publisher, valid = years.usual }: SigningValues,
  from: string,
  today: string,
): Signing {
  if (key === undefined || key === "") throw new WordsNotUnderstood(sentence("references.noKey"));
  const name = publisher?.trim() ?? "";
  if (name === "" || name.length > tableLimits.publisherLength || shown(name) !== name)
    throw new WordsNotUnderstood(sentence("references.publisher", { most: tableLimits.publisherLength }));
  const count = /^\d{1,2}$/.test(valid) ? Number(valid) : 0;
  if (count < 1 || count > years.most)
    throw new WordsNotUnderstood(sentence("references.valid", { most: years.most }));
  return {
    key: readKeyFile(resolve(from, key)),
    publisher: name,
    ...{ made: today, validUntil: yearsAfter(today, count) },
  };
}

/** Returns the same day so many years later; of 29 February, the day before where there is none. */
function yearsAfter(day: string, count: number): string {
  const later = `${Number(day.slice(0, 4)) + count}${day.slice(4)}`;
  const isThere = new Date(`${later}T00:00:00Z`).toISOString().startsWith(later);
  return isThere ? later : later.replace(/29$/, "28");
}

function isInside(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way !== "" && !way.startsWith("..");
}

/** Turns Node's English error on an unknown option, or one without its value, into one line above the usage. */
function parsed<Result>(parse: () => Result): Result {
  try {
    return parse();
  } catch (error) {
    const text = error instanceof Error ? error.message.split(/[.\n]/)[0] : String(error);
    throw new WordsNotUnderstood(sentence("references.options", { text: text ?? "" }));
  }
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}
