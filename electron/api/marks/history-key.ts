/** Returns the key of marks that compare: one athlete and one fingerprint. */
export function historyKey(mark: { readonly athleteId: number; readonly fingerprint: string }): string {
  return `${mark.athleteId} ${mark.fingerprint}`;
}
