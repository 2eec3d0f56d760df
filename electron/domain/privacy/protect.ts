import { protectMarks } from "./marks-rule.ts";
import { protectProfiles } from "./profiles-rule.ts";
import type { BundleKind, Candidate, Protected, Strictness } from "./rule.ts";

/**
 * Decides which marks of a day are released, as MODEL.md says. Every candidate's mark is either released or counted in
 * `suppressed`, whatever the input's order.
 * @throws Refusal `bad-input` when k is below the least.
 */
export function protect(
  kind: BundleKind,
  candidates: readonly Candidate[],
  strictness: Strictness,
): Protected {
  return kind === "marks" ? protectMarks(candidates, strictness) : protectProfiles(candidates, strictness);
}
