/** One way of telling an attribute, applied to every record. */
export interface Generalisation {
  /** For each record a whole number: records of equal numbers are told alike. Of a mark, 0 says that there is none. */
  readonly codes: readonly number[];
  /** For each record what is lost, in thousandths of all that the attribute says. */
  readonly losses: readonly number[];
  /** False for a mark that is not told at all, which asks for no diversity. */
  readonly tells: boolean;
  /** The codes of the lowest and the highest part, which both must be among what is told: they hide the worst and the best. */
  readonly ends?: readonly [lowest: number, highest: number];
  /** Values of which each class that is told this way needs two: a size band must not stand for one league. */
  readonly mixed?: readonly number[];
}

export interface Attribute {
  readonly kind: "mark" | "quasi";
  /** How much of a record's loss is this attribute's; the weights of a problem sum to 1000. */
  readonly weight: number;
  readonly choices: readonly Generalisation[];
}

/** What is asked of a node. */
export interface Demands {
  /** The least records of equal codes. */
  readonly k: number;
  /** The least different marks told in a class (equal quasi-identifiers). */
  readonly l: number;
  /** The most records that may be suppressed. */
  readonly limit: number;
  /** The fewest tests whose marks are told. */
  readonly tests: number;
}

/** One choice of each attribute, and what it costs. */
export interface Node {
  /** The place of the choice in each attribute. */
  readonly chosen: readonly number[];
  /** Millionths of a record, summed over all records; a suppressed one loses a million. */
  readonly loss: number;
  /** For each record whether it stays out. */
  readonly suppressed: readonly boolean[];
}
