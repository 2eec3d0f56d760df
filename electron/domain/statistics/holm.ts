/**
 * Returns which of several findings hold when one looks at all of them at once: with a chance of at most `rate`, any of
 * those that are chance alone is among them, in the order given. Each value is the chance that nothing but chance makes
 * such a finding.
 * Source: Holm 1979, Scandinavian Journal of Statistics 6(2), 65–70.
 */
export function holdTogether(chances: readonly number[], rate: number): boolean[] {
  // Whatever is above the rate by itself holds in no order.
  const order = chances
    .flatMap((chance, at) => (chance <= rate ? { chance, at } : []))
    .toSorted((a, b) => a.chance - b.chance);
  const fails = order.findIndex(({ chance }, rank) => chance * (chances.length - rank) > rate);
  const held = new Set(order.slice(0, fails === -1 ? order.length : fails).map(({ at }) => at));
  return chances.map((_chance, at) => held.has(at));
}
