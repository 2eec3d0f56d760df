import { zipSync } from "fflate";
import { readBundle } from "../../../electron/api/reference/read.ts";
import { type BundleFile, bundleFile } from "../../../electron/bundle/bundle-file.ts";
import type { Contents } from "../../../electron/bundle/contents.ts";
import { sha256 } from "../../../electron/bundle/datapackage.ts";
import { seededChance } from "../../../electron/domain/chance.ts";
import { publish, summarise } from "../../../electron/domain/privacy/publish.ts";
import type { BundleKind, ReleasedMark, ReleasedRow } from "../../../electron/domain/privacy/rule.ts";
import { usualStrictness } from "../../../electron/domain/privacy/rule.ts";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { defaultParameters, testCodes } from "../../../electron/domain/tests/registry.ts";

/** Rows of a bundle that are alike. */
export interface Told {
  readonly count: number;
  readonly marks: readonly ReleasedMark[];
  readonly category?: string;
  readonly ageBand?: string;
  readonly quarter?: string;
}

export interface Wanted {
  readonly rows: readonly Told[];
  readonly kind?: BundleKind;
  readonly demo?: boolean;
  readonly rehearsal?: boolean;
  readonly seed?: number;
  /** Beats a minute of the push-ups, where they are not the usual ones. */
  readonly bpm?: number;
}

/** A bundle of any rows, written by the program's own writer as it would leave the room. */
export function makeBundle(wanted: Wanted): BundleFile {
  const { rows, kind = "marks", demo = false, rehearsal = false, seed = 1, bpm = 40 } = wanted;
  const kept = rows.flatMap(
    ({ count, marks, category = "women", ageBand = "25 to 29", quarter = "2026-Q1" }) =>
      Array.from({ length: count }, (): ReleasedRow => {
        return { athlete: 0, quasi: { ageBand, category, leagueSize: "15 to 29", quarter }, marks };
      }),
  );
  const protocols = testCodes.map((test) => ({ test, parameters: defaultParameters(test) }));
  const changed = protocols.map((each) =>
    each.test === "push-up" ? { ...each, parameters: { ...defaultParameters("push-up"), bpm } } : each,
  );
  const contents: Contents = {
    ...{ kind, demo, rehearsal, quarter: "2026-Q1", protocols: changed, decisions: [], suppressed: [] },
    rows: publish(kept, seededChance([1, 2, 3, seed])),
    summaries: summarise(kept),
    strictness: usualStrictness,
    likeness: { k: 5, classes: 1, l: 2, entropyL: 2 },
    risk: { records: kept.length, classes: 1, unique: 0, largest: 0.2, mean: 0.2 },
    attack: { bibs: 0, certain: 0, exposed: 0, largest: 0, expected: 0 },
    subtraction: { marks: 0, found: 0, people: 0 },
  };
  return bundleFile(contents);
}

export function pushUps(low: number | null, high: number | null): ReleasedMark {
  return { test: "push-up", variant: "full", low, high };
}

/** Three parts of push-ups, 30 women in all. */
export const plain: readonly Told[] = [
  { count: 10, marks: [pushUps(null, 20)] },
  { count: 12, marks: [pushUps(20, 25)] },
  { count: 8, marks: [pushUps(25, null)] },
];

/** The files of a bundle as texts, by name. */
export function textsOf({ files }: BundleFile): Map<string, string> {
  return new Map(files.map(({ name, text }) => [name, text]));
}

/** A zip of these files, deflated or as they are. */
export function zipOf(texts: ReadonlyMap<string, string>, level: 0 | 6 = 0): Uint8Array {
  const entries = [...texts].map(([name, text]) => [name, new Uint8Array(Buffer.from(text))] as const);
  return zipSync(Object.fromEntries(entries), { level });
}

/** The same files with sizes and hashes that fit them: what somebody does who means harm and knows the format. */
export function rehashed(texts: ReadonlyMap<string, string>): Map<string, string> {
  const descriptor = JSON.parse(texts.get("datapackage.json") ?? "") as {
    resources: { path: string; bytes: number; hash: string }[];
  };
  for (const resource of descriptor.resources) {
    const text = texts.get(resource.path) ?? "";
    resource.bytes = Buffer.byteLength(text);
    resource.hash = `sha256:${sha256(text)}`;
  }
  return new Map([...texts, ["datapackage.json", JSON.stringify(descriptor)]]);
}

/** A bundle of which one file was changed by `change`, its hash fitting again. */
export function tamper(bundle: BundleFile, name: string, change: (text: string) => string): Uint8Array {
  const texts = textsOf(bundle);
  const changed = new Map([...texts, [name, change(texts.get(name) ?? "")]]);
  return zipOf(name === "datapackage.json" ? changed : rehashed(changed));
}

/** What a file is refused with as a bundle: the key of its sentence, or "taken". Anything but a refusal is a fault. */
export function whyNot(zip: Uint8Array): string {
  try {
    readBundle(zip);
  } catch (error) {
    if (error instanceof Refusal) return error.sentence.key;
    throw error;
  }
  return "taken";
}
