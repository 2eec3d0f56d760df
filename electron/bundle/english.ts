const numbers = "Zero One Two Three Four Five Six Seven Eight Nine Ten".split(" ");

/** A small number as a sentence begins with it. */
export function inWords(count: number): string {
  return numbers[count] ?? String(count);
}

/** "a, b and c". */
export function listed(parts: readonly string[], before: "and" | "or"): string {
  const [last = ""] = parts.slice(-1);
  const rest = parts.slice(0, -1).join(", ");
  return rest === "" ? last : `${rest} ${before} ${last}`;
}
