import { type Cells, type Codes, codesOf, holds, split, whole } from "./cells.ts";
import { judge } from "./node.ts";

/** One way of telling an attribute, applied to every record. */
export interface Choice {
  /** For each record a whole number: records of equal numbers are told alike. Of a mark, 0 says that there is none. */
  readonly codes: readonly number[];
  /** For each record what is lost, in thousandths of all that the attribute says. */
  readonly losses: readonly number[];
  /** False for a mark that is not told at all, which asks for no diversity. */
  readonly tells: boolean;
  /** The codes of the lowest and the highest part, which both must be among what is told: they hide the worst and the best. */
  readonly ends?: readonly [lowest: number, highest: number];
  /** Values of which each class that is told this way needs two: a size band must not stand for one league. */
  readonly mixed?: readonly number[];
}

export interface Attribute {
  readonly kind: "mark" | "quasi";
  /** How much of a record's loss is this attribute's; the weights of a problem sum to 1000. */
  readonly weight: number;
  readonly choices: readonly Choice[];
}

/** What is asked of a node. */
export interface Demands {
  /** The least records of equal codes. */
  readonly k: number;
  /** The least different marks told in a class (equal quasi-identifiers). */
  readonly l: number;
  /** The most records that may be suppressed. */
  readonly limit: number;
  /** The fewest tests whose marks are told. */
  readonly tests: number;
}

/** One choice of each attribute, and what it costs. */
export interface Node {
  /** The place of the choice in each attribute. */
  readonly chosen: readonly number[];
  /** Millionths of a record, summed over all records; a suppressed one loses a million. */
  readonly loss: number;
  /** For each record whether it stays out. */
  readonly suppressed: readonly boolean[];
}

/** A choice made ready for the search. */
interface Way {
  readonly place: number;
  readonly codes: Codes;
  readonly ends: readonly number[];
  /** What it costs when nobody is suppressed: never more than it costs at last. */
  readonly loss: number;
}

/**
 * The node of least loss that meets the demands, or null when none does; among equals the first in the order of the
 * choices. Exact: a branch is left only when no node on it can be better or meet the demands. Cells only split on the way
 * down, so that what is too small stays too small, an end that is gone stays gone, and no loss goes down. After each choice
 * the ways that are left of all other attributes are looked through, and the least of them make the bound.
 */
export function bestNode(size: number, attributes: readonly Attribute[], demands: Demands): Node | null {
  let best: Node | null = null;
  const chosen: number[] = [];
  const descend = (cells: Cells, loss: number, open: readonly (readonly Way[])[]): void => {
    const left = open.map((ways) => ways.filter((way) => holds(cells, way.codes, way.ends, demands)));
    const bound = left.reduce((sum, ways) => sum + leastLoss(ways), loss);
    if (bound > (best?.loss ?? Number.POSITIVE_INFINITY) || bound === Number.POSITIVE_INFINITY) return;
    const [ways, ...later] = left;
    if (ways === undefined) {
      const node = judge(attributes, chosen, demands);
      if (node !== null && (best === null || isBefore(node, best))) best = node;
      return;
    }
    for (const way of ways) {
      chosen.push(way.place);
      descend(split(cells, way.codes), loss + way.loss, later);
      chosen.pop();
    }
  };
  descend(whole(size), 0, attributes.map(waysOf));
  return best;
}

/** The choices of an attribute, those that lose least first, so that a good node is found early. */
function waysOf({ weight, choices }: Attribute): Way[] {
  return choices
    .map(({ codes, losses, ends = [] }, place) => ({
      ...{ place, codes: codesOf(codes), ends },
      loss: weight * losses.reduce((sum, loss) => sum + loss, 0),
    }))
    .sort((a, b) => a.loss - b.loss || a.place - b.place);
}

/** Of ways in the order of their loss; without one nothing meets the demands. */
function leastLoss([first]: readonly Way[]): number {
  return first?.loss ?? Number.POSITIVE_INFINITY;
}

function isBefore(node: Node, other: Node): boolean {
  if (node.loss !== other.loss) return node.loss < other.loss;
  const at = node.chosen.findIndex((place, index) => place !== other.chosen[index]);
  return at >= 0 && (node.chosen[at] ?? 0) < (other.chosen[at] ?? 0);
}
