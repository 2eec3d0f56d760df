import type { Attribute, Demands } from "../../../electron/domain/privacy/problem.ts";

/**
 * The least loss of any node, by trying every one: written apart from the search, with texts in place of cells, so that
 * the two can only agree by being right. Null when no node meets the demands.
 */
export function leastLoss(size: number, attributes: readonly Attribute[], demands: Demands): number | null {
  const losses = everyNode(attributes.map(({ choices }) => choices.length)).flatMap((chosen) => {
    const loss = lossOf(size, attributes, chosen, demands);
    return loss === null ? [] : [loss];
  });
  return losses.length === 0 ? null : Math.min(...losses);
}

function everyNode(counts: readonly number[]): number[][] {
  return counts.reduce<number[][]>(
    (nodes, count) => nodes.flatMap((node) => Array.from({ length: count }, (_none, at) => [...node, at])),
    [[]],
  );
}

function lossOf(size: number, attributes: readonly Attribute[], chosen: readonly number[], demands: Demands) {
  const { k, l, limit, tests } = demands;
  const columns = attributes.map((attribute, at) => {
    const choice = attribute.choices[chosen[at] ?? -1];
    if (choice === undefined) throw new Error("no such choice");
    return { ...choice, kind: attribute.kind, weight: attribute.weight };
  });
  if (columns.filter(({ kind, tells }) => kind === "mark" && tells).length < tests) return null;
  const rows = Array.from({ length: size }, (_none, row) => ({
    row,
    all: columns.map(({ codes }) => codes[row]).join("|"),
    known: columns
      .map(({ kind, tells, codes }) => (kind === "quasi" ? codes[row] : tells && codes[row] !== 0))
      .join("|"),
  }));
  const out = new Set(
    rows.filter(({ all }) => rows.filter((other) => other.all === all).length < k).map(({ row }) => row),
  );
  for (const known of new Set(rows.map((row) => row.known))) {
    const members = rows.filter((row) => row.known === known && !out.has(row.row)).map(({ row }) => row);
    const different = (values: readonly number[]) => new Set(members.map((row) => values[row])).size;
    const poor = columns.some(({ kind, tells, codes, mixed }) =>
      kind === "mark"
        ? tells && members.some((row) => codes[row] !== 0) && different(codes) < l
        : mixed !== undefined && members.length > 0 && different(mixed) < 2,
    );
    if (poor) for (const row of members) out.add(row);
  }
  if (out.size > limit) return null;
  const told = rows.filter(({ row }) => !out.has(row)).map(({ row }) => row);
  for (const { ends = [], codes } of columns) {
    if (ends.some((end) => !told.some((row) => codes[row] === end))) return null;
  }
  let loss = 0;
  for (const { row } of rows) {
    if (out.has(row)) loss += 1_000_000;
    else for (const { weight, losses } of columns) loss += weight * (losses[row] ?? 0);
  }
  return loss;
}
