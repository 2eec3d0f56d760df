import type { TFunction } from "i18next";
import type { ReactNode } from "react";
import type { LengthUnit, Mark, Written } from "../../electron/domain/tests/protocol.ts";
import type { AttemptOf, ParametersOf, TestCode } from "../../electron/domain/tests/registry.ts";

/** The words of one test, and those shared by all windows. */
export type Texts<Code extends TestCode> = TFunction<[Code, "common"]>;

/** A number of a test's rules that the organiser can change; its label is `setting.<name>` in the test's words. */
export type Setting = readonly [name: string, value: number];

/** The sentences on a station's sheet besides the rules shown at entry, one per line. */
export interface SheetLines {
  readonly setUp: readonly string[];
  readonly run: readonly string[];
  readonly form: readonly string[];
}

/** The layout of the drawing on a station's sheet; a strip is set in type, and scales with it. */
type DrawingLayout = "picture" | "pair" | "strip" | "large-strip";

/**
 * All that windows know of one test, but for its live run (`live/tool.ts`). A test's folder makes one and passes it to `registry.ts`; screens ask the
 * registry, so that no other file names a test.
 */
export interface TestFace<
  Code extends TestCode = TestCode,
  Parameters = ParametersOf<Code>,
  Attempt = AttemptOf<Code>,
> {
  /** The drawing on a station's sheet. */
  readonly drawing: {
    readonly layout: DrawingLayout;
    readonly Drawing: (props: { readonly parameters: Parameters }) => ReactNode;
  };
  /** The steps of the test in order, one per line, under "How it is run". */
  readonly Steps?: (props: { readonly parameters: Parameters }) => ReactNode;
  /** Returns the numbers in the sentences of its rules. */
  numbers(parameters: Parameters): Readonly<Record<string, string | number>>;
  /** Returns the numbers of its rules that can be changed, in the units people think in. */
  settings(parameters: Parameters): readonly Setting[];
  /** Returns the parameters with other numbers; the API judges whether they are allowed. */
  withSettings(parameters: Parameters, settings: readonly Setting[]): unknown;
  /** Describes its rules in one line. */
  summary(t: Texts<Code>, parameters: Parameters): string;
  /** Describes an attempt in one line. */
  seen(t: Texts<Code>, seen: Attempt, lengths: LengthUnit): string;
  /** Describes an attempt's other data, for an athlete who asks for theirs. */
  besides?(t: Texts<Code>, seen: Attempt): string | null;
  /** Describes an attempt's own value, where it alone makes no mark. */
  alone?(
    t: Texts<Code>,
    parameters: Parameters,
    seen: Attempt,
  ): { readonly written: Written; readonly what: string };
  /** Describes a saved attempt besides its mark. */
  remark?(t: Texts<Code>, seen: Attempt, mark: Mark): string | null;
  /** Says what is entered of an unfinished test, and what the rest makes of it; null if there is nothing to say. */
  begun?(t: Texts<Code>, standing: readonly Attempt[]): string | null;
  /** Describes in a sentence or two what an athlete has to do. */
  asks(t: Texts<Code>, parameters: Parameters): string;
  lines(t: Texts<Code>, parameters: Parameters): SheetLines;
  /**
   * Returns one worked example of its score, one sentence per line. The attempt is invented; its mark is the protocol's
   * own answer with that day's parameters, so that the paper never differs from the desk.
   */
  example(t: Texts<Code>, parameters: Parameters): readonly string[];
}
