/**
 * Marks a store's bytes as a file that stands alone, or as one that is changed through a write-ahead log; in place.
 * The header has it twice, for writing and for reading ("The Database File Format", 1.3.3, sqlite.org/fileformat2.html).
 */
export function markFile(store: Buffer, as: "alone" | "with-log"): Buffer {
  return store.length < 100 ? store : store.fill(as === "alone" ? 1 : 2, 18, 20);
}
