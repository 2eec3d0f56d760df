import type { Cells } from "./cells.ts";
import type { Cue } from "./cue.ts";
import type { KeyedTest } from "./fields.ts";
import type { LaneState, LiveTest, What } from "./live.ts";
import type { LengthUnit, Protocol, Unfinished } from "./protocol.ts";

/**
 * All that the program knows of one test outside its windows. A test's folder makes one and passes it to `registry.ts`;
 * everything else asks the registry, so that no other file names a test.
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
  /** Returns the cues from one moment to another; extra ones do no harm, since `cuesBetween` drops them. */
  cues(parameters: Parameters, fromMs: number, untilMs: number): Cue[];
  readonly keyed: KeyedTest<Attempt>;
  readonly sheet: SheetTest<Attempt>;
  readonly figures: Figures;
  readonly english: English<Parameters>;
  /**
   * Returns the cadences as judged one by one, "." on and "x" off; null where only the sum was kept. Left out where an
   * instrument decides.
   */
  judged?(seen: Attempt): string | null;
  /** Returns the reps that somebody did who stopped, and those of the whole test; left out where nobody can stop early. */
  repsDone?(parameters: Parameters, stopped: Unfinished): { readonly done: number; readonly of: number };
}

/** A column of results that a test needs, by its name in FORMATS; tests may share one. */
export interface SheetColumn {
  readonly name: string;
  /** The column's name in an earlier version, whose sheets are still read. */
  readonly formerly?: string;
  readonly unit: string;
  /** Meaning, for the data dictionary. */
  readonly means: string;
  /** way: how the test was done, besides the variant; seen: what was seen; written: never read from a sheet. */
  readonly kind: "way" | "seen" | "written";
}

/** A test's cells on a sheet: the raw parts of an attempt, lengths in cm and times in s. */
export type SeenCells = Readonly<Record<string, string | number | null>>;

/** A column whose blank cell says nothing by itself: a person says once what it means in a sheet. */
export interface AskedColumn {
  readonly name: string;
  /** What can be meant, as it would be written. */
  readonly options: readonly string[];
}

/** An attempt that gives a mark of an earlier day, so that the test itself scores and judges it. */
interface PastMark<Attempt> {
  readonly seen: Attempt;
  /** The mark in grains, where one attempt alone makes none. */
  readonly value?: number;
}

/** A test's format on sheets. */
export interface SheetTest<Attempt> {
  readonly columns: readonly SheetColumn[];
  /** @throws RowRefused */
  read(cells: Cells): Attempt;
  /** Writes an attempt's cells, without those the test does not have. */
  write(seen: Attempt): SeenCells;
  /** Columns of its results that can't be left blank unasked. */
  readonly asked?: readonly AskedColumn[];
  /** What an attempt of a sheet is known by when the sheet comes again, where an earlier version kept it otherwise. */
  knownAs?(seen: Attempt): unknown;
  /** Reads `mark` and `unit` of a sheet of past results. @throws RowRefused */
  readPast(cells: Cells): PastMark<Attempt>;
}

/** The steps for coarsening one test's marks, in its grains, and the range that measures losses. */
export interface Ladder {
  /** Fine to coarse. A step's bounds are its whole multiples from 0, on every day and in every hall the same. */
  readonly steps: readonly [number, ...number[]];
  /** The one step of linked profiles, which report marks in two or three parts only. */
  readonly profileStep: number;
  /** Range of nearly all marks (a station asks "sure?" outside it); a step's loss is a share of it. */
  readonly usual: readonly [from: number, to: number];
}

/** The figures of a test, in grains unless noted. */
export interface Figures {
  readonly ladder: Ladder;
  /**
   * Starting value of a store without pairs, with its source in a comment: a fixed part in the unit of the mark
   * (`grain.unit`), a share of the mark, and the degrees of freedom that the source is worth. Squares of the parts add up.
   */
  readonly typicalError: { readonly fixed: number; readonly share: number; readonly degrees: number };
  /**
   * Where the test tells no more, in grains: the mark that nobody can be below, and the one from which on it grows no
   * harder. Places name them; null where there is none.
   */
  readonly ends: { readonly floor: number | null; readonly ceiling: number | null };
  /** Returns the least difference between two readings. */
  reading(lengths: LengthUnit): number;
  /** A middling mark that explains the test while the store has none; ours, no source. */
  readonly middling: number;
  /** Initial number of lanes at a station. */
  readonly lanes: number;
  /** Steps between ticks that people count in, fine to coarse. */
  axisSteps(lengths: LengthUnit): readonly number[];
  /** Writes a tick on an axis, where it differs from the mark's own number. */
  writeTick?(value: number): string;
  /**
   * Returns a trial's value in grains from a stored attempt, where a mark is the best of several trials. The variation
   * within a day is read from them. Null where one attempt is the mark.
   */
  readonly trial: ((seen: unknown) => number) | null;
}

/** The English texts of a test for files that leave the program; English in every language. */
export interface English<Parameters> {
  /** The ability that the test measures: "strength". */
  readonly ability: string;
  /** Full name: "cadence push-up (strength)". */
  readonly name: string;
  /** The unit of a mark: "s, rounded down". */
  readonly mark: string;
  /** Describes how the mark is made, with the parameters of that day, in whole sentences. */
  how(parameters: Parameters): string;
}
