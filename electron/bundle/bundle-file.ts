import { fingerprint } from "../domain/tests/fingerprint.ts";
import { protocolOf, rulesVersion, testCodes } from "../domain/tests/registry.ts";
import type { DayProtocol } from "../store/tables/days.ts";
import { codebookFile } from "./codebook.ts";
import { type Contents, jsonFile, type TextFile } from "./contents.ts";
import { descriptorFile, occasionOf, sha256 } from "./datapackage.ts";
import { privacyFile } from "./privacy.ts";
import { marksSheet, profilesSheet, summarySheet } from "./sheets.ts";
import { zipOf } from "./zip.ts";

/** A bundle ready to write: the same contents always give the same bytes. */
export interface BundleFile {
  /** File name with the kind and the quarter, and nothing more precise. */
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Hash of all bytes, in hexadecimal digits. */
  readonly sha256: string;
  /** Its files, in order. */
  readonly files: readonly TextFile[];
}

export function bundleFile(contents: Contents): BundleFile {
  const { kind, quarter } = contents;
  const described = {
    rows: kind === "marks" ? marksSheet(contents.rows) : profilesSheet(contents.rows),
    summary: summarySheet(contents.summaries),
    protocols: protocolsFile(contents.protocols),
    privacy: privacyFile(contents),
    codebook: codebookFile(contents),
  };
  const { rows, summary, protocols, privacy, codebook } = described;
  const files = [descriptorFile(contents, described), rows, summary, protocols, codebook, privacy];
  const bytes = zipOf(files);
  const name = `tapeline-${kind === "marks" ? "bundle" : "profiles"}${occasionOf(contents)}-${quarter}.zip`;
  return { name, bytes, sha256: sha256(bytes), files };
}

/** Makes the file of each test's rules: only marks of equal fingerprints compare when bundles are merged. */
function protocolsFile(protocols: readonly DayProtocol[]): TextFile {
  const tests = protocols
    .toSorted((a, b) => testCodes.indexOf(a.test) - testCodes.indexOf(b.test))
    .map(({ test, parameters }) => {
      const { better, grain, variants } = protocolOf(test);
      return {
        test,
        unit: grain.unit,
        smallestStep: 1 / grain.perUnit,
        better,
        parameters,
        variants: variants.map((variant) => ({
          variant,
          fingerprint: fingerprint(test, variant, parameters),
        })),
      };
    });
  return jsonFile("protocols.json", { scoringRules: rulesVersion, tests });
}
