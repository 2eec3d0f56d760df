import type { Cells } from "./cells.ts";
import type { Cue } from "./cue.ts";
import type { KeyedTest } from "./fields.ts";
import type { LaneState, LiveTest, What } from "./live.ts";
import type { LengthUnit, Protocol } from "./protocol.ts";

/**
 * All that the program knows of one test outside its windows. A test's folder makes one of these and hands it to
 * `registry.ts`; everything else asks the registry, so that no other file names a test.
 */
export interface TestDefinition<
  Code extends string,
  Parameters,
  Attempt,
  Own extends What,
  Kept,
  Lane extends LaneState<Attempt>,
> {
  readonly protocol: Protocol<Code, Parameters, Attempt>;
  readonly live: LiveTest<Parameters, Attempt, Own, Kept, Lane>;
  /** The cues from one moment to another; more than is asked for does no harm, `cuesBetween` leaves it out. */
  cues(parameters: Parameters, fromMs: number, untilMs: number): Cue[];
  readonly keyed: KeyedTest<Attempt>;
  readonly sheet: SheetTest<Attempt>;
  readonly figures: Figures;
  readonly english: English<Parameters>;
  /**
   * What a judge saw one by one, "." on and "x" off; null where only the sum was kept. Left out where an instrument
   * decides: then judges are not compared.
   */
  judged?(seen: Attempt): string | null;
}

/** A column of results that a test needs, under its name in FORMATS; tests may share one. */
export interface SheetColumn {
  readonly name: string;
  readonly unit: string;
  /** For the data dictionary. */
  readonly means: string;
  /** way: how the test was done, beside the variant; seen: what was seen; written: never read from a sheet. */
  readonly kind: "way" | "seen" | "written";
}

/** What a test's cells on a sheet are: the raw parts of an attempt, lengths in cm and times in s. */
export type SeenCells = Readonly<Record<string, string | number | null>>;

/** An attempt that makes a mark of earlier days, so that the test itself scores it and says whether to believe it. */
interface PastMark<Attempt> {
  readonly seen: Attempt;
  /** In grains, where one attempt alone makes no mark. */
  readonly value?: number;
}

/** How a test stands on sheets. */
export interface SheetTest<Attempt> {
  readonly columns: readonly SheetColumn[];
  /** @throws RowRefused */
  read(cells: Cells): Attempt;
  /** What a test does not know is left out. */
  write(seen: Attempt): SeenCells;
  /** Reads `mark` and `unit` of a sheet of past results. @throws RowRefused */
  readPast(cells: Cells): PastMark<Attempt>;
}

/** The steps to which the marks of one test may be coarsened, in its grains, and the range that losses are measured on. */
export interface Ladder {
  /** Fine to coarse. A step's lines are its whole multiples from 0, on every day and in every hall the same. */
  readonly steps: readonly [number, ...number[]];
  /** The one step of linked profiles, whose marks are told in two or three parts only. */
  readonly profileStep: number;
  /** Where nearly every mark lies (the range outside which a station asks "sure?"); a share of it is what a step loses. */
  readonly usual: readonly [from: number, to: number];
}

/** The numbers that go with a test. Grains unless it says otherwise. */
export interface Figures {
  readonly ladder: Ladder;
  /** What a store without pairs starts from, with its source beside it: grains, or a share of the mark. */
  readonly typicalError: { readonly kind: "grains" | "share"; readonly amount: number };
  /** The least difference between two readings. */
  readonly reading: number;
  /** A middling mark to explain the test by while the store has none; ours, no source. */
  readonly middling: number;
  /** Lanes that a station begins with. */
  readonly lanes: number;
  /** Steps between ticks that people count in, fine to coarse. */
  axisSteps(lengths: LengthUnit): readonly number[];
  /** A tick as it stands at an axis, where that is not the mark's own number. */
  writeTick?(value: number): string;
  /**
   * Where a mark is the best of several trials: the part of an attempt that is a trial's value in grains, less another
   * part. The swing within a day is read from them. Null where one attempt is the mark.
   */
  readonly trial: { readonly value: string; readonly less: string | null } | null;
}

/** What files that leave the program say of a test: they are English in every language. */
export interface English<Parameters> {
  /** "strength": what the test measures. */
  readonly ability: string;
  /** "cadence push-up (strength)". */
  readonly name: string;
  /** What a mark is counted in: "s, rounded down". */
  readonly mark: string;
  /** How the mark is made, with the parameters of that day, in whole sentences. */
  how(parameters: Parameters): string;
}
