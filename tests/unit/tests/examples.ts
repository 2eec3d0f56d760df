import type { Arbitrary } from "fast-check";

/** What properties that hold for every test are tried with. */
export interface Examples {
  /** Attempts of a shape that the door lets in. */
  readonly attempts: Arbitrary<unknown>;
  /** What is mostly seen in a hall, so that much of it is taken and the day moves on. */
  readonly usual: Arbitrary<unknown>;
  /** What a day really sees, so that most of it gets in. */
  readonly believable: Arbitrary<unknown>;
  /** Kinds and details of its taps, sensible or not. */
  readonly taps: Arbitrary<[string, unknown]>;
}
