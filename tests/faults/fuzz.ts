import { procedures } from "../door/fuzz/ask.ts";
import { fuzz, newToll } from "../door/fuzz/run.ts";

/**
 * `npm run fuzz [-- CALLS [SEED]]`: calls at random through the whole door, in halls of 500 calls each on real stores.
 * Ends with 1 when something came of them that must never be; the seed it prints makes the same calls again.
 */
const [calls = 10_000, seed = Date.now() % 1_000_000_000] = process.argv.slice(2).map(Number);
const each = 500;
const toll = newToll();

process.on("unhandledRejection", (reason) => toll.wrong.push(`a rejection that nobody handled: ${reason}`));

console.log(`${calls} calls from seed ${seed}`);
for (let done = 0; done < calls; done += each) {
  const known = toll.wrong.length;
  await fuzz(Math.min(each, calls - done), seed + done, toll);
  for (const wrong of toll.wrong.slice(known)) console.error(`  WRONG (seed ${seed + done}) ${wrong}`);
}

const most = (counts: ReadonlyMap<string, number>) => [...counts].sort((a, b) => b[1] - a[1]);
const sum = (counts: ReadonlyMap<string, number>) =>
  [...counts.values()].reduce((all, count) => all + count, 0);
console.log(
  `${sum(toll.answered)} answered by ${toll.answered.size} procedures, ${sum(toll.refused)} refused:`,
);
const never = procedures.map(({ path }) => path).filter((path) => !toll.answered.has(path));
console.log(`  never answered, refused alone: ${never.join(", ") || "none"}`);
for (const [key, count] of most(toll.refused)) console.log(`  ${String(count).padStart(6)} ${key}`);
console.log(`the slowest took ${toll.slowestMs.toFixed(0)} ms (${toll.slowest})`);
console.log(`${toll.wrong.length} wrong`);
process.exitCode = toll.wrong.length === 0 ? 0 : 1;
