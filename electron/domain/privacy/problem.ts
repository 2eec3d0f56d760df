/** One generalisation of an attribute, applied to every record. */
export interface Generalisation {
  /** The code of each record: records of equal codes are reported alike. For a mark, 0 means none. */
  readonly codes: readonly number[];
  /** The loss of each record, in thousandths of the attribute's information. */
  readonly losses: readonly number[];
  /** False for a mark that is not reported at all, which needs no diversity. */
  readonly tells: boolean;
  /** Codes of the lowest and the highest part, which hide the worst and the best: both must be reported. */
  readonly ends?: readonly [lowest: number, highest: number];
  /** Values of which each class needs two: a size band must not mean one league. */
  readonly mixed?: readonly number[];
}

export interface Attribute {
  readonly kind: "mark" | "quasi";
  /** This attribute's share of a record's loss; the weights of a problem sum to 1000. */
  readonly weight: number;
  readonly choices: readonly Generalisation[];
}

/** The demands on a node. */
export interface Demands {
  /** Fewest records of equal codes. */
  readonly k: number;
  /** Fewest different marks reported in a class (equal quasi-identifiers). */
  readonly l: number;
  /** Most records that may be suppressed. */
  readonly limit: number;
  /** Fewest tests whose marks are reported. */
  readonly tests: number;
}

/** One choice for each attribute, and its loss. */
export interface Node {
  /** The index of the choice in each attribute. */
  readonly chosen: readonly number[];
  /** Millionths of a record, summed over all records; a suppressed one loses a million. */
  readonly loss: number;
  /** For each record, true if it is suppressed. */
  readonly suppressed: readonly boolean[];
}
