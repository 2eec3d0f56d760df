/**
 * Counts classes in a table of plain text, written apart from the program: rows of equal text in the named columns are
 * one class. k is the smallest class, l the fewest different values of `sensitive` in any class (distinct l-diversity).
 * Definitions: Sweeney 2002; Machanavajjhala et al. 2007.
 */
export function countClasses(
  table: readonly Readonly<Record<string, string>>[],
  columns: readonly string[],
  sensitive: string,
): { k: number; l: number; classes: number } {
  const sizes: Record<string, number> = {};
  const seen: Record<string, Record<string, true>> = {};
  for (const row of table) {
    const name = columns.map((column) => `<${row[column]}>`).join("");
    sizes[name] = (sizes[name] ?? 0) + 1;
    seen[name] = { ...seen[name], [row[sensitive] ?? ""]: true };
  }
  const kinds = Object.values(seen).map((values) => Object.keys(values).length);
  return {
    k: Math.min(...Object.values(sizes)),
    l: Math.min(...kinds),
    classes: kinds.length,
  };
}
