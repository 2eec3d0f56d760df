import type { ReferenceTable } from "../domain/reference-table/table.ts";

/** Writes codebook.md: what a table is, what every column means, and what it must not be used for. English, for data users. */
export function tableCodebook({
  publisher,
  made,
  validUntil,
  bundles,
}: Pick<ReferenceTable, "publisher" | "made" | "validUntil" | "bundles">): string {
  return `# Percentiles of roller derby fitness tests

Made by ${publisher.replaceAll(/[\r\n]/g, " ")} on ${made}, to be used until ${validUntil}, of ${bundles.length} anonymised bundles.

- \`groups.csv\`: a group is the results by one set of rules, of one category and age band or of all. At least 20 results of at
  least 3 halls. Of one hall no more counts than a third of a group, and than three halls of middle size have.
- \`percentiles.csv\`: the bounds between which each percentile lies (low ≤ percentile < high; an empty bound is open). Bundles
  tell results in steps, so a percentile is known by bounds alone. Percentiles beyond which fewer than five results lie are left out.
- \`bundles.csv\`: hashes of the bundles, by which one is known that is in here already.
- \`signature.json\`: Ed25519 over the bytes "tapeline reference table", a line feed, and datapackage.json.

\`counts_as\` says how many independent results would say as much: those of one hall are alike.

Percentiles are of the value, not of how good it is. The people are those whose halls sent bundles and who agreed to share: no
sample of a sport. They say nothing about what somebody should reach, and are no ground for a decision about a person or
for training through pain.
`;
}
