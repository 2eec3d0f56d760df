import type { Contents } from "../../bundle/contents.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { Export } from "../../store/tables/exports.ts";

/** The largest allowed share of bibs that a neighbour matches likelier than one in k: none. */
const exposedLimit = 0;

/**
 * Refuses a bundle in which a neighbour finds somebody. The rule should never make one: this is a second check of the
 * finished bundle by other code.
 * @throws Refusal `unavailable`
 */
export function requireHidden({
  attack,
  subtraction,
  strictness: { k },
  likeness,
}: Pick<Contents, "attack" | "subtraction" | "strictness" | "likeness">): void {
  const found = Math.max(attack.exposed, subtraction.people);
  const share = attack.bibs === 0 ? 0 : found / attack.bibs;
  if (share > exposedLimit || (likeness.k !== null && likeness.k < k)) {
    throw new Refusal(
      "unavailable",
      sentence("bundle.recognisable", { count: found, percent: Math.round(share * 100) }),
    );
  }
}

/**
 * Refuses a second bundle of a day: compared with the first, the rows that differ would stand alone. The same file may
 * be shared again.
 * @throws Refusal `conflict`
 */
export function requireFirst(earlier: readonly Export[], sha256: string): void {
  if (earlier.length > 0 && !earlier.some((entry) => entry.sha256 === sha256)) {
    throw new Refusal("conflict", sentence("bundle.second"));
  }
}
