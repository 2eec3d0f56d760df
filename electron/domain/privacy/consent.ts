import { mayBeUnder18 } from "../people/age.ts";

/** The consent to share an athlete's marks; if not given, which one is missing. */
export type Consent = "given" | "no-share" | "no-guardian";

/** Returns the consent. Somebody who may be under 18 on the day needs a guardian's consent besides their own. */
export function consentOf(
  athlete: { readonly share: boolean; readonly guardianConsent: boolean; readonly birthYear: number | null },
  date: string,
): Consent {
  if (!athlete.share) return "no-share";
  const needsGuardian = mayBeUnder18(athlete.birthYear, date);
  return needsGuardian && !athlete.guardianConsent ? "no-guardian" : "given";
}
