import { say } from "../api/door/words.ts";
import { sentence } from "../domain/words.ts";
import { readArguments, type Wanted } from "./arguments.ts";
import { createBar } from "./bar.ts";
import { shortFormOf, writeKey } from "./keys.ts";
import { type MergeArguments, type Merged, merge } from "./merge.ts";
import { NothingToMerge } from "./nothing.ts";

/** npm runs its scripts in the project's folder; paths are meant from where it was called. */
const isByNpm = ["table", "percentiles", "reference"].includes(process.env.npm_lifecycle_event ?? "");
const folder = isByNpm ? (process.env.INIT_CWD ?? process.cwd()) : process.cwd();

/** Makes the page for everybody, without results yet, where it is not made; tells what it does. */
type MakePage = (tell: (line: string) => void) => Promise<unknown>;

/** Does what somebody's words say, and returns the exit code (see merge-references.ts). */
export async function runCommand(words: readonly string[], makePage: MakePage): Promise<number> {
  try {
    return await run(readArguments(words, folder, today()), makePage);
  } catch (error) {
    return explain(error);
  }
}

/** Today by this machine's calendar (ISO 8601). */
function today(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}

async function run(wanted: Wanted, makePage: MakePage): Promise<number> {
  if (wanted.what === "merge") return await mergeAll(wanted.merge, makePage);
  if (wanted.what === "usage") console.log(say(sentence("references.usage")));
  else {
    const short = await writeKey(wanted.path);
    console.log(say(sentence("references.newKey", { path: wanted.path, key: short })));
  }
  return 0;
}

async function mergeAll(wanted: MergeArguments, makePage: MakePage): Promise<number> {
  if (wanted.page !== null) await makePage(console.log);
  const bar = createBar(process.stdout, () => performance.now());
  const merged = await merge(wanted, {
    keptBack(name, why) {
      bar.clear();
      console.error(`${name}: ${say(why)}`);
    },
    progress: bar.show,
  });
  bar.clear();
  if (merged.files === 0) throw new NothingToMerge(sentence("references.none", { path: wanted.folder }));
  tell(merged, wanted);
  return merged.keptBack > 0 ? 3 : 0;
}

function tell(
  { files, halls, marks, groups, keptBack, differing }: Merged,
  { out, signing, page }: MergeArguments,
): void {
  const seconds = Number((performance.now() / 1000).toFixed(1));
  console.log(say(sentence("references.done", { count: files, halls, marks, groups, keptBack, seconds })));
  for (const { name, test, off } of differing) {
    const place = Math.round(100 * (0.5 + off));
    console.log(say(sentence("references.differs", { name, test, place })));
  }
  if (differing.length > 0) console.log(say(sentence("references.askThem")));
  if (signing === null) {
    console.log(say(sentence("references.written", { path: out })));
    return;
  }
  const { validUntil, key } = signing;
  const told = { path: out, date: validUntil, key: shortFormOf(key) };
  console.log(say(sentence("references.tableWritten", told)));
  if (page !== null) console.log(say(sentence("references.pageWritten", { path: page })));
}

/** Prints one clear line; an unforeseen error is shown whole. */
function explain(error: unknown): number {
  if (error instanceof NothingToMerge) {
    console.error(say(error.sentence));
    if (error.isAboutWords) console.error(say(sentence("references.usage")));
    return 2;
  }
  if (error instanceof Error && "syscall" in error && "code" in error) {
    console.error(say(sentence("references.notWritten", { code: String(error.code) })));
    return 1;
  }
  console.error(error);
  return 1;
}
