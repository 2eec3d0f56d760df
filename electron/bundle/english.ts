const numbers = "Zero One Two Three Four Five Six Seven Eight Nine Ten".split(" ");

/** Returns a small number as a word that begins a sentence. */
export function inWords(count: number): string {
  return numbers[count] ?? String(count);
}

/** Joins parts: "a, b and c". */
export function listed(parts: readonly string[], before: "and" | "or"): string {
  const [last = ""] = parts.slice(-1);
  const rest = parts.slice(0, -1).join(", ");
  return rest === "" ? last : `${rest} ${before} ${last}`;
}
