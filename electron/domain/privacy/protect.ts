import { protectMarks } from "./marks-rule.ts";
import { protectProfiles } from "./profiles-rule.ts";
import type { BundleKind, Candidate, Protected, Strictness } from "./rule.ts";

/**
 * Decides what of a day may leave, as MODEL.md says. Every candidate's mark is either told or counted in `suppressed`,
 * whatever the order they came in.
 * @throws Refusal `bad-input` when k is below the least.
 */
export function protect(
  kind: BundleKind,
  candidates: readonly Candidate[],
  strictness: Strictness,
): Protected {
  return kind === "marks" ? protectMarks(candidates, strictness) : protectProfiles(candidates, strictness);
}
