import { importBench } from "./import.ts";
import { recordBench } from "./record.ts";
import { rehearseBench } from "./rehearse.ts";
import { windowsBench } from "./windows.ts";

/**
 * `npm run bench`: measures, one program after another, and prints each figure beside its target. Ratios compare with
 * the bare work in the same run; times alone say as much about the machine.
 */
const programs: readonly (readonly [name: string, run: () => unknown])[] = [
  ["recording an attempt with its mark, against a bare INSERT: ratio at most 2.5", recordBench],
  ["taking in 5,000 roster rows, against papaparse and bare INSERTs: ratio at most 3", importBench],
  ["rehearsing the demonstration's day: under 5 s", rehearseBench],
  ["from a record to both windows painted, 200 records: ms", windowsBench],
];

for (const [name, run] of programs) {
  console.log(`\n${name}`);
  console.dir(await run(), { depth: null });
}
