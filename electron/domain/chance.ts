/** Four whole numbers from 0 to 2³² − 1, not all zero: a generator's starting state. */
export type Seed = readonly [number, number, number, number];

/**
 * Returns a generator of uniform numbers in [0, 1) that repeats for the same seed: xoshiro128** 1.1 of Blackman & Vigna
 * 2018 (public domain), 32 bits per number. Good for order and ids that must repeat. It keeps no secret: its numbers
 * give away all others, so it must not shuffle anything whose order alone says something.
 */
export function seededChance(seed: Seed): () => number {
  const state = Uint32Array.from(seed) as Uint32Array & Record<0 | 1 | 2 | 3, number>;
  if (state.every((part) => part === 0)) throw new RangeError("A seed of zeros gives nothing but zeros.");
  return () => {
    const result = Math.imul(rotated(Math.imul(state[1], 5), 7), 9) >>> 0;
    const shifted = state[1] << 9;
    state[2] ^= state[0];
    state[3] ^= state[1];
    state[1] ^= state[2];
    state[0] ^= state[3];
    state[2] ^= shifted;
    state[3] = rotated(state[3], 11);
    return result / 2 ** 32;
  };
}

function rotated(bits: number, by: number): number {
  return (bits << by) | (bits >>> (32 - by));
}

/** Returns the values in random order (Fisher & Yates; Durstenfeld 1964, Communications of the ACM 7(7)). */
export function shuffled<Value>(values: readonly Value[], random: () => number): Value[] {
  const order = [...values];
  for (let last = order.length - 1; last > 0; last -= 1) {
    const chosen = Math.floor(random() * (last + 1));
    const [moved] = order.splice(chosen, 1, order[last] as Value);
    order[last] = moved as Value;
  }
  return order;
}
