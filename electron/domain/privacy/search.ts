import { type Codes, codesOf, holds, type Partition, split, whole } from "./cells.ts";
import { judgeNode } from "./node.ts";
import type { Attribute, Demands, Node } from "./problem.ts";

/** A choice made ready for the search. */
interface Way {
  readonly place: number;
  readonly codes: Codes;
  readonly ends: readonly number[];
  /** The loss when nobody is suppressed: never more than the final one. */
  readonly loss: number;
}

/**
 * Returns the node of least loss that meets the demands, or null when none does; among equals the first in the order of
 * the choices. Exact: a branch is dropped only when no node on it can be better or meet the demands. Cells only split
 * on the way down, so a cell that is too small stays so, a lost end stays lost, and no loss goes down. After each
 * choice the remaining ways of all other attributes are checked, and the least of them give the bound.
 */
export function bestNode(size: number, attributes: readonly Attribute[], demands: Demands): Node | null {
  let best: Node | null = null;
  const chosen: number[] = [];
  const descend = (cells: Partition, loss: number, open: readonly (readonly Way[])[]): void => {
    const left = open.map((ways) => ways.filter((way) => holds(cells, way.codes, way.ends, demands)));
    const bound = left.reduce((sum, ways) => sum + leastLoss(ways), loss);
    if (bound > (best?.loss ?? Number.POSITIVE_INFINITY) || bound === Number.POSITIVE_INFINITY) return;
    const [ways, ...later] = left;
    if (ways === undefined) {
      const node = judgeNode(attributes, chosen, demands);
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

/** Returns the choices of an attribute, least loss first, so that a good node is found early. */
function waysOf({ weight, choices }: Attribute): Way[] {
  return choices
    .map(({ codes, losses, ends = [] }, place) => ({
      ...{ place, codes: codesOf(codes), ends },
      loss: weight * losses.reduce((sum, loss) => sum + loss, 0),
    }))
    .sort((a, b) => a.loss - b.loss || a.place - b.place);
}

/** Returns the least loss of sorted ways; infinite without any, since then nothing meets the demands. */
function leastLoss([first]: readonly Way[]): number {
  return first?.loss ?? Number.POSITIVE_INFINITY;
}

function isBefore(node: Node, other: Node): boolean {
  if (node.loss !== other.loss) return node.loss < other.loss;
  const at = node.chosen.findIndex((place, index) => place !== other.chosen[index]);
  return at >= 0 && (node.chosen[at] ?? 0) < (other.chosen[at] ?? 0);
}
