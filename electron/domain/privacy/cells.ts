/** The reported value of each record, as whole numbers below `radix`. */
export interface Codes {
  readonly of: Int32Array;
  readonly radix: number;
}

export function codesOf(codes: readonly number[]): Codes {
  return { of: Int32Array.from(codes), radix: 1 + codes.reduce((most, code) => Math.max(most, code), 0) };
}

/** The cell of each record: so far, the records of one cell are reported alike. */
export interface Partition {
  readonly of: Int32Array;
  readonly count: number;
}

/** Puts all records in one cell. */
export function whole(size: number): Partition {
  return { of: new Int32Array(size), count: Math.min(1, size) };
}

/** Counts the records of each cell by code, cell by cell. */
function sizesOf({ of, count }: Partition, codes: Codes): Int32Array {
  const sizes = new Int32Array(count * codes.radix);
  for (let record = 0; record < of.length; record += 1) {
    const key = (of[record] ?? 0) * codes.radix + (codes.of[record] ?? 0);
    sizes[key] = (sizes[key] ?? 0) + 1;
  }
  return sizes;
}

/**
 * True if these codes may be reported as well: cells smaller than k hold no more records than the limit, and each end
 * keeps at least one cell that is large enough.
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

/** Splits each cell by the codes of its records. */
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

/** Counts the records of each cell. */
export function cellSizes({ of, count }: Partition): Int32Array {
  return sizesOf({ of, count }, { of: new Int32Array(of.length), radix: 1 });
}
