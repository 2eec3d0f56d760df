import { seeded } from "../door/desk.ts";

/** Standard normal values that repeat with the seed (Box & Muller 1958). */
export function normals(seed: number): () => number {
  const uniform = seeded(seed);
  return () => {
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    return radius * Math.cos(2 * Math.PI * uniform());
  };
}
