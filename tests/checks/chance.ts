/** Chance that repeats with its seed: two generators combined (L'Ecuyer 1988, Communications of the ACM 31(6)). */
function uniforms(seed: number): () => number {
  let [one, other] = [1 + (seed % 2_147_483_562), 1 + ((7 * seed + 12_345) % 2_147_483_398)];
  return () => {
    one = (one * 40_014) % 2_147_483_563;
    other = (other * 40_692) % 2_147_483_399;
    const difference = (one - other + 2_147_483_562) % 2_147_483_562;
    return (difference + 0.5) / 2_147_483_562;
  };
}

/** Standard normal values that repeat with the seed (Box & Muller 1958, Annals of Mathematical Statistics 29). */
export function normals(seed: number): () => number {
  const uniform = uniforms(seed);
  // Neighbouring seeds start alike.
  for (let step = 0; step < 20; step += 1) uniform();
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
