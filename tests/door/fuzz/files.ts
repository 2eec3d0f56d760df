import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc, { type Arbitrary } from "fast-check";

/** The demonstration's own sheets, short enough that many fit in a run. */
const sheets = ["roster.csv", "results.csv", "past.csv"];

/** A real sheet (its first rows), the same with bytes damaged, or bytes of any kind. */
export function fileLike(folder: string): Arbitrary<Uint8Array> {
  const real = fc.constantFrom(...sheets).map((name) => headOf(readFileSync(join(folder, name), "utf8")));
  const bytes = real.map((text) => new TextEncoder().encode(text));
  const flips = fc.array(fc.tuple(fc.nat(4000), fc.nat(255)), { maxLength: 5 });
  const damaged = fc.tuple(bytes, flips).map(([sound, all]) => {
    const copy = new Uint8Array(sound);
    for (const [at, value] of all) copy[at % copy.length] = value;
    return copy;
  });
  const any = fc.uint8Array({ maxLength: 200 });
  return fc.oneof({ weight: 5, arbitrary: bytes }, { weight: 3, arbitrary: damaged }, any);
}

function headOf(text: string): string {
  return text.split("\n").slice(0, 20).join("\n");
}
