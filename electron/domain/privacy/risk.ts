/** The anonymity of a table: how alike its records are. */
export interface Likeness {
  /** Size of the smallest class; null for an empty table. */
  readonly k: number | null;
  readonly classes: number;
  /** Fewest different sensitive values in any class (distinct l-diversity); null for an empty table. */
  readonly l: number | null;
  /** Least exp(H) of the sensitive values in any class, H their entropy with natural logarithms; null when empty. */
  readonly entropyL: number | null;
}

/**
 * Measures classes, that is records of equal quasi-identifiers. k-anonymity after Sweeney 2002 (Int J Uncertain Fuzz
 * Knowl Syst 10(5)); distinct and entropy l-diversity after Machanavajjhala et al. 2007 (ACM TKDD 1(1), art. 3).
 */
export function likenessOf<Row>(
  rows: readonly Row[],
  classOf: (row: Row) => string,
  sensitiveOf: (row: Row) => string,
): Likeness {
  const classes = [...Map.groupBy(rows, classOf).values()];
  if (classes.length === 0) return { k: null, classes: 0, l: null, entropyL: null };
  const counts = classes.map((some) =>
    [...Map.groupBy(some, sensitiveOf).values()].map(({ length }) => length),
  );
  return {
    k: Math.min(...classes.map(({ length }) => length)),
    classes: classes.length,
    l: Math.min(...counts.map(({ length }) => length)),
    entropyL: Math.min(...counts.map(expOfEntropy)),
  };
}

function expOfEntropy(counts: readonly number[]): number {
  const all = counts.reduce((sum, count) => sum + count, 0);
  return Math.exp(counts.reduce((sum, count) => sum - (count / all) * Math.log(count / all), 0));
}

/** The risk of singling out one record, from the number that look the same (prosecutor risk: 1 / class size). */
export interface Risk {
  readonly records: number;
  readonly classes: number;
  /** Number of records alone in their class. */
  readonly unique: number;
  /** From 0 to 1; 0 for an empty table. */
  readonly largest: number;
  readonly mean: number;
}

/** Returns the risk when the attacker knows everything in `keys` (one per record). */
export function riskOf(keys: readonly string[]): Risk {
  const sizes = [...Map.groupBy(keys, (key) => key).values()].map(({ length }) => length);
  const records = keys.length;
  return {
    records,
    classes: sizes.length,
    unique: sizes.filter((size) => size === 1).length,
    largest: records === 0 ? 0 : 1 / Math.min(...sizes),
    mean: records === 0 ? 0 : sizes.length / records,
  };
}
