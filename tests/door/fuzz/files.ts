import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc, { type Arbitrary } from "fast-check";
import { makeBundle, plain } from "../../unit/reference/making.ts";
import { demoFolder } from "../rehearsing.ts";

/** The demonstration's own sheets, so short that many fit in a run. */
const sheets = ["roster.csv", "results.csv", "past.csv"].map((name) => {
  const rows = readFileSync(join(demoFolder, name), "utf8").split("\n");
  return new TextEncoder().encode(rows.slice(0, 20).join("\n"));
});
const bundle = new Uint8Array(makeBundle({ rows: plain }).bytes);

/** What is brought by bytes: a sound file, the same with bytes damaged, or bytes of any kind. */
export function filesOf(path: string): Arbitrary<Uint8Array> {
  const sound = fc.constantFrom(...(path === "reference.bring" ? [bundle] : sheets));
  const flips = fc.array(fc.tuple(fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 5 });
  const damaged = fc.tuple(sound, flips).map(([whole, all]) => {
    const copy = new Uint8Array(whole);
    for (const [at, value] of all) copy[at % copy.length] = value;
    return copy;
  });
  return fc.oneof(
    { weight: 5, arbitrary: sound },
    { weight: 3, arbitrary: damaged },
    fc.uint8Array({ maxLength: 200 }),
  );
}
