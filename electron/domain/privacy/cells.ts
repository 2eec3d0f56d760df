/** What each record is told as, in whole numbers below `radix`. */
export interface Codes {
  readonly of: Int32Array;
  readonly radix: number;
}

export function codesOf(codes: readonly number[]): Codes {
  return { of: Int32Array.from(codes), radix: 1 + codes.reduce((most, code) => Math.max(most, code), 0) };
}

/** Which cell each record is in: records of one cell are told alike so far. */
export interface Partition {
  readonly of: Int32Array;
  readonly count: number;
}

/** All records in one cell. */
export function whole(size: number): Partition {
  return { of: new Int32Array(size), count: Math.min(1, size) };
}

/** How many records would be in each cell with each code; cell by cell. */
function sizesOf({ of, count }: Partition, codes: Codes): Int32Array {
  const sizes = new Int32Array(count * codes.radix);
  for (let record = 0; record < of.length; record += 1) {
    const key = (of[record] ?? 0) * codes.radix + (codes.of[record] ?? 0);
    sizes[key] = (sizes[key] ?? 0) + 1;
  }
  return sizes;
}

/**
 * Whether records may also be told by these codes: not more than the limit in cells of fewer than k, and of each end at
 * least one cell that is not too small.
 */
export function holds(
  cells: Partition,
  codes: Codes,
  ends: readonly number[],
  { k, limit }: { readonly k: number; readonly limit: number },
): boolean {
  const sizes = sizesOf(cells, codes);
  let small = 0;
  for (const size of sizes) if (size < k) small += size;
  return small <= limit && ends.every((end) => hasLarge(sizes, end, codes.radix, k));
}

function hasLarge(sizes: Int32Array, code: number, radix: number, k: number): boolean {
  for (let key = code; code < radix && key < sizes.length; key += radix)
    if ((sizes[key] ?? 0) >= k) return true;
  return false;
}

/** The cells, each split by what the records are told as. */
export function split(cells: Partition, codes: Codes): Partition {
  if (codes.radix === 1) return cells;
  const renamed = new Int32Array(cells.count * codes.radix).fill(-1);
  let count = 0;
  const of = cells.of.map((cell, record) => {
    const key = cell * codes.radix + (codes.of[record] ?? 0);
    if (renamed[key] === -1) {
      renamed[key] = count;
      count += 1;
    }
    return renamed[key] ?? 0;
  });
  return { of, count };
}

/** How many records each cell has. */
export function cellSizes({ of, count }: Partition): Int32Array {
  return sizesOf({ of, count }, { of: new Int32Array(of.length), radix: 1 });
}
