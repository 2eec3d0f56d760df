/**
 * `npm run percentiles -- DIR --out FILE` (`npm run reference` before): merges the bundles of many organisers into one sheet of percentiles. Ends with 0
 * when every bundle was taken, 3 when some were kept back, 2 when there was nothing to merge, 1 when something failed.
 */
import { say } from "./api/door/words.ts";
import { sentence } from "./domain/words.ts";
import { type MergeArguments, NothingToMerge, readArguments } from "./reference/arguments.ts";
import { merge } from "./reference/merge.ts";

/** npm runs its scripts in the project's folder; paths are meant from where it was called. */
const isByNpm = ["percentiles", "reference"].includes(process.env.npm_lifecycle_event ?? "");
const folder = isByNpm ? (process.env.INIT_CWD ?? process.cwd()) : process.cwd();

async function main(): Promise<number> {
  try {
    const wanted = readArguments(process.argv.slice(2), folder);
    if (wanted !== null) return await mergeAll(wanted);
    console.log(say(sentence("references.usage")));
    return 0;
  } catch (error) {
    return explain(error);
  }
}

async function mergeAll(wanted: MergeArguments): Promise<number> {
  const merged = await merge(wanted, (name, why) => console.error(`${name}: ${say(why)}`));
  if (merged.bundles === 0) throw new NothingToMerge(sentence("references.none", { path: wanted.folder }));
  const seconds = Number((performance.now() / 1000).toFixed(1));
  const { bundles, marks, groups, keptBack } = merged;
  console.log(say(sentence("references.done", { count: bundles, marks, groups, keptBack, seconds })));
  console.log(say(sentence("references.written", { path: wanted.out })));
  return keptBack > 0 ? 3 : 0;
}

/** Prints one clear line; an unforeseen error is shown whole. */
function explain(error: unknown): number {
  if (error instanceof NothingToMerge) {
    console.error(`${say(error.sentence)}\n${say(sentence("references.usage"))}`);
    return 2;
  }
  if (error instanceof Error && "syscall" in error && "code" in error) {
    console.error(say(sentence("references.notWritten", { code: String(error.code) })));
    return 1;
  }
  console.error(error);
  return 1;
}

process.exitCode = await main();
