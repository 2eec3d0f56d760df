import { mayBeUnder18 } from "../people/age.ts";

/** Whether an athlete's marks may leave at all, and what is missing where they may not. */
export type Consent = "given" | "no-share" | "no-guardian";

/** Somebody who may be under 18 on the day needs a guardian's consent beside the own "yes". */
export function consentOf(
  athlete: { readonly share: boolean; readonly guardianConsent: boolean; readonly birthYear: number | null },
  date: string,
): Consent {
  if (!athlete.share) return "no-share";
  const needsGuardian = mayBeUnder18(athlete.birthYear, date);
  return needsGuardian && !athlete.guardianConsent ? "no-guardian" : "given";
}
