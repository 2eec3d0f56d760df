import type { Contents } from "../../bundle/contents.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { Export } from "../../store/tables/exports.ts";

/** The largest share of bibs that a neighbour may match likelier than one in k: nobody. */
const exposedLimit = 0;

/**
 * Refuses a bundle in which a neighbour finds somebody. The rule should never make one: this is a second look by other
 * code at what is about to leave.
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
 * Refuses a second bundle of a day: laid beside the first, the rows that differ would stand alone. The same file may leave
 * again.
 * @throws Refusal `conflict`
 */
export function requireFirst(earlier: readonly Export[], sha256: string): void {
  if (earlier.length > 0 && !earlier.some((entry) => entry.sha256 === sha256)) {
    throw new Refusal("conflict", sentence("bundle.second"));
  }
}
