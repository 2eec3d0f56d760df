import { cellSizes, codesOf, type Partition, split, whole } from "./cells.ts";
import type { Attribute, Demands, Generalisation, Node } from "./problem.ts";

/** The loss of a suppressed record: all of it, in millionths. */
const lossOfSuppressed = 1_000_000;

/** Judges a node: finds the records to suppress, and whether they are few enough. Null where demands are not met. */
export function judgeNode(
  attributes: readonly Attribute[],
  chosen: readonly number[],
  demands: Demands,
): Node | null {
  const choices = attributes.map(({ choices: all }, at) => all[chosen[at] ?? 0] as Generalisation);
  const told = choices.filter(({ tells }, at) => tells && attributes[at]?.kind === "mark");
  if (told.length < demands.tests) return null;
  const cells = cellsOf(choices);
  const sizes = cellSizes(cells);
  const suppressed = Array.from(cells.of, (cell) => (sizes[cell] ?? 0) < demands.k);
  for (const members of classesOf(attributes, choices, cells.of.length)) {
    const kept = members.filter((record) => suppressed[record] === false);
    if (!isMixed(attributes, choices, kept, demands.l)) for (const record of kept) suppressed[record] = true;
  }
  if (suppressed.filter(Boolean).length > demands.limit) return null;
  if (!choices.every((choice) => hasEnds(choice, suppressed))) return null;
  return { chosen: [...chosen], suppressed, loss: lossOf(attributes, choices, suppressed) };
}

function cellsOf(choices: readonly Generalisation[]): Partition {
  const size = choices[0]?.codes.length ?? 0;
  return choices.reduce((cells, { codes }) => split(cells, codesOf(codes)), whole(size));
}

/** Checks that both ends are left. Without them the lowest and the highest remaining mark would have both bounds. */
function hasEnds({ codes, ends }: Generalisation, suppressed: readonly boolean[]): boolean {
  if (ends === undefined) return true;
  return ends.every((end) => codes.some((code, record) => code === end && suppressed[record] === false));
}

/** Groups records of which the same is known without any mark: equal quasi-identifiers, and the same tests done. */
function classesOf(
  attributes: readonly Attribute[],
  choices: readonly Generalisation[],
  size: number,
): number[][] {
  const records = Array.from({ length: size }, (_none, record) => record);
  const known = choices.map(({ codes, tells }, at) => {
    if (attributes[at]?.kind === "quasi") return codes;
    return codes.map((code) => Number(tells && code !== 0));
  });
  const keyOf = (record: number) => known.map((codes) => codes[record]).join();
  return [...Map.groupBy(records, keyOf).values()];
}

/**
 * True if a class has at least l different marks of each reported test, and two of each value that must not be alone.
 */
function isMixed(
  attributes: readonly Attribute[],
  choices: readonly Generalisation[],
  members: readonly number[],
  l: number,
): boolean {
  const [first] = members;
  if (first === undefined) return true;
  const kinds = (values: readonly number[]) => new Set(members.map((record) => values[record])).size;
  return choices.every(({ tells, codes, mixed }, at) => {
    if (attributes[at]?.kind === "mark") return !tells || codes[first] === 0 || kinds(codes) >= l;
    return mixed === undefined || kinds(mixed) >= 2;
  });
}

function lossOf(
  attributes: readonly Attribute[],
  choices: readonly Generalisation[],
  suppressed: readonly boolean[],
): number {
  return suppressed.reduce((sum, out, record) => {
    if (out) return sum + lossOfSuppressed;
    return choices.reduce(
      (all, { losses }, at) => all + (attributes[at]?.weight ?? 0) * (losses[record] ?? 0),
      sum,
    );
  }, 0);
}
