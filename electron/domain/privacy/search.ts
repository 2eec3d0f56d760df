import { type Cells, judge, recordsInSmall, split } from "./node.ts";

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

/**
 * The node of least loss that meets the demands, or null when none does; among equals the first in the order of the
 * choices. Exact: a branch is left only when no node on it can be better or feasible. Classes only split on the way down,
 * so that what is too small stays too small, and no loss goes down.
 */
export function bestNode(size: number, attributes: readonly Attribute[], demands: Demands): Node | null {
  const levels = attributes.map((attribute) =>
    attribute.choices.map((choice) => keptLoss(attribute, choice)),
  );
  const leastAfter = levels.map((_none, at) =>
    levels.slice(at).reduce((sum, losses) => sum + Math.min(...losses), 0),
  );
  let best: Node | null = null;
  const chosen: number[] = [];
  const descend = (at: number, cells: Cells, loss: number): void => {
    if (best !== null && loss + (leastAfter[at] ?? 0) > best.loss) return;
    const attribute = attributes[at];
    if (attribute === undefined) {
      const node = judge(attributes, chosen, demands, cells);
      if (node !== null && (best === null || isBefore(node, best))) best = node;
      return;
    }
    attribute.choices.forEach((choice, place) => {
      const finer = split(cells, choice.codes);
      if (recordsInSmall(finer, demands.k) > demands.limit) return;
      chosen.push(place);
      descend(at + 1, finer, loss + (levels[at]?.[place] ?? 0));
      chosen.pop();
    });
  };
  descend(0, { of: Array.from({ length: size }, () => 0), sizes: size === 0 ? [] : [size] }, 0);
  return best;
}

function isBefore(node: Node, other: Node): boolean {
  if (node.loss !== other.loss) return node.loss < other.loss;
  const at = node.chosen.findIndex((place, index) => place !== other.chosen[index]);
  return at >= 0 && (node.chosen[at] ?? 0) < (other.chosen[at] ?? 0);
}

/** What a choice costs when nobody is suppressed: never more than it costs at last. */
function keptLoss({ weight }: Attribute, { losses }: Choice): number {
  return weight * losses.reduce((sum, loss) => sum + loss, 0);
}
