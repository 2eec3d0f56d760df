/**
 * Marks a store's bytes, in place, as a file without a write-ahead log or as one with it. The header says so twice, for
 * writing and for reading ("The Database File Format", 1.3.3, sqlite.org/fileformat2.html).
 */
export function markFile(store: Buffer, as: "alone" | "with-log"): Buffer {
  return store.length < 100 ? store : store.fill(as === "alone" ? 1 : 2, 18, 20);
}
