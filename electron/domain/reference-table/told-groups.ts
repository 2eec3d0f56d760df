import { everybody, type GroupOfMarks, leastOfGroup } from "./table.ts";

/** What decides whether a group may be told. `different`: how many different intervals its counted marks have. */
export interface Tellable extends Pick<GroupOfMarks, "marks" | "halls"> {
  readonly different: number;
}

/** True if a group is large, broad and varied enough to be told. */
export function mayBeTold({ marks, halls, different }: Tellable): boolean {
  return marks >= leastOfGroup.marks && halls >= leastOfGroup.halls && different >= leastOfGroup.different;
}

type Named = Pick<GroupOfMarks, "fingerprint" | "category" | "ageBand" | "marks">;

/**
 * Leaves out groups until none can be worked out to be of a few: where all told parts of a wider group (its age bands,
 * its categories) leave one to four of its marks, its smallest part is left out too. Bundles never tell fewer than five
 * alike, so that only what counts in part leaves such rests. The order of the groups is kept.
 */
export function withoutNarrowRests<Group extends Named>(groups: readonly Group[]): Group[] {
  const left = new Set(groups);
  for (let found = narrow(left); found !== undefined; found = narrow(left)) left.delete(found);
  return groups.filter((group) => left.has(group));
}

/** Returns the smallest part of the first wider group that has a rest of one to four. */
function narrow<Group extends Named>(groups: ReadonlySet<Group>): Group | undefined {
  const byRules = Map.groupBy(groups, ({ fingerprint }) => fingerprint);
  for (const alike of byRules.values()) {
    for (const whole of alike) {
      for (const parts of partitionsOf(whole, alike)) {
        const rest = whole.marks - parts.reduce((sum, { marks }) => sum + marks, 0);
        if (parts.length > 0 && rest >= 1 && rest < leastOfGroup.beyond) return smallest(parts);
      }
    }
  }
  return undefined;
}

/** Returns the told parts of a group, by each way in which it falls into parts. */
function partitionsOf<Group extends Named>(
  { category, ageBand }: Named,
  groups: readonly Group[],
): Group[][] {
  const ways: Group[][] = [];
  if (ageBand === everybody) {
    ways.push(groups.filter((each) => each.category === category && each.ageBand !== everybody));
  }
  if (category === everybody) {
    ways.push(groups.filter((each) => each.ageBand === ageBand && each.category !== everybody));
  }
  return ways;
}

function smallest<Group extends Named>(parts: readonly Group[]): Group | undefined {
  const key = ({ category, ageBand }: Named) => JSON.stringify([category, ageBand]);
  return parts.toSorted((a, b) => a.marks - b.marks || (key(a) < key(b) ? -1 : 1))[0];
}
