import { fuzzNetwork } from "../network/fuzz/run.ts";

/**
 * `npm run fuzz:network [-- REQUESTS [SEED]]`: requests at random over the real socket, to tables of 1,000 each. Ends with 1
 * when something came of them that must never be; the seed it prints sends the same bytes again.
 */
const [requests = 10_000, seed = Date.now() % 1_000_000_000] = process.argv.slice(2).map(Number);
const each = 1_000;
let count = 0;
const all = new Map<string, number>();

console.log(`${requests} requests from seed ${seed}`);
for (let done = 0; done < requests; done += each) {
  const { statuses, wrong } = await fuzzNetwork(Math.min(each, requests - done), seed + done);
  for (const [status, times] of statuses) all.set(status, (all.get(status) ?? 0) + times);
  for (const told of wrong) console.error(`  WRONG (seed ${seed + done}) ${told}`);
  count += wrong.length;
}
for (const [status, times] of [...all].sort()) console.log(`  ${String(times).padStart(6)} ${status}`);
console.log(`${count} wrong`);
process.exitCode = count === 0 ? 0 : 1;
