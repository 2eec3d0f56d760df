import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";

/**
 * An independent counter of percentiles: opens bundles and nothing else, puts every mark of a group in a list, sorts it,
 * and looks up the ranks between which type 7 of Hyndman and Fan lies. It shares no line with the program and knows no SQL.
 */
interface Group {
  readonly lows: number[];
  readonly highs: number[];
  readonly bundles: Set<number>;
  readonly unit: string;
}

/** Every line of the sheet that these bundles should give, without its header, in any order. */
export function countPercentiles(zips: Iterable<Uint8Array>): string[] {
  const groups = new Map<string, Group>();
  let number = 0;
  for (const zip of zips) {
    number += 1;
    addBundle(groups, zip, number);
  }
  return [...groups].flatMap(([name, group]) => (group.lows.length < 20 ? [] : linesOf(name, group)));
}

function addBundle(groups: Map<string, Group>, zip: Uint8Array, number: number): void {
  const files = unzipSync(zip);
  const rules = rulesIn(strFromU8(files["protocols.json"] ?? new Uint8Array()));
  const lines = strFromU8(files["marks.csv"] ?? new Uint8Array()).split("\r\n");
  for (const line of lines.slice(1, -1)) {
    const [, test = "", variant = "", age = "", category = "", , , low = "", high = "", unit = ""] =
      line.split(",");
    const name = JSON.stringify([test, variant, rules.get(`${test} ${variant}`), category, age]);
    const group = groups.get(name) ?? { lows: [], highs: [], bundles: new Set(), unit };
    groups.set(name, group);
    group.lows.push(low === "" ? -Infinity : Number(low));
    group.highs.push(high === "" ? Infinity : Number(high));
    group.bundles.add(number);
  }
}

function rulesIn(text: string): Map<string, string> {
  type Told = { test: string; variants: { variant: string; fingerprint: string }[] };
  const { tests } = JSON.parse(text) as { tests: Told[] };
  return new Map(
    tests.flatMap(({ test, variants }) =>
      variants.map((each) => [`${test} ${each.variant}`, each.fingerprint]),
    ),
  );
}

function linesOf(name: string, { lows, highs, bundles, unit }: Group): string[] {
  lows.sort((a, b) => a - b);
  highs.sort((a, b) => a - b);
  const better = name.startsWith('["endurance"') ? "lower" : "higher";
  const group = (JSON.parse(name) as string[]).map(quoted);
  return [5, 10, 25, 50, 75, 90, 95].map((p) => {
    const place = ((lows.length - 1) * p) / 100;
    const [low, high] = [lows[Math.floor(place)] ?? Number.NaN, highs[Math.ceil(place)] ?? Number.NaN];
    return [...group, p, bound(low), bound(high), unit, better, lows.length, bundles.size].join();
  });
}

function bound(value: number): string {
  return Number.isFinite(value) ? String(value) : "";
}

function quoted(text: string): string {
  return /[",]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The bundles of these files, one in memory at a time. */
export function* bundlesAt(paths: readonly string[]): Generator<Uint8Array> {
  for (const path of paths) yield new Uint8Array(readFileSync(path));
}
