import type { TFunction } from "i18next";
import type { ReactNode } from "react";
import type { LengthUnit, Mark, Written } from "../../electron/domain/tests/protocol.ts";
import type { AttemptOf, ParametersOf, TestCode } from "../../electron/domain/tests/registry.ts";
import type { LiveTool } from "./live/tool.ts";

/** The words of one test, and those that all windows share. */
export type Texts<Code extends TestCode> = TFunction<[Code, "common"]>;

/** A number of a test's rules that the organiser can change; its label is `setting.<name>` in the test's words. */
export type Setting = readonly [name: string, value: number];

/** The sentences of a station's sheet that its rules beside the entry don't say, a sentence a line. */
export interface SheetLines {
  readonly setUp: readonly string[];
  readonly run: readonly string[];
  readonly form: readonly string[];
}

/** How the drawing of a station's sheet lies in its place; a strip is set in type, and grows with it. */
type DrawingLayout = "picture" | "pair" | "strip" | "large-strip";

/**
 * All that windows know of one test. A test's folder makes one of these and hands it to `registry.ts`; screens ask the
 * registry, so that no other file names a test.
 */
export interface TestFace<
  Code extends TestCode = TestCode,
  Parameters = ParametersOf<Code>,
  Attempt = AttemptOf<Code>,
> {
  /** How it is run live. */
  readonly live: LiveTool<Code>;
  /** The drawing of a station's sheet. */
  readonly drawing: {
    readonly layout: DrawingLayout;
    readonly Drawing: (props: { readonly parameters: Parameters }) => ReactNode;
  };
  /** What happens one after the other while it is run, a line each, under "How it is run". */
  readonly Steps?: (props: { readonly parameters: Parameters }) => ReactNode;
  /** The numbers that stand in the sentences of its rules. */
  numbers(parameters: Parameters): Readonly<Record<string, string | number>>;
  /** The numbers of its rules that can be changed, in the units in which people think. */
  settings(parameters: Parameters): readonly Setting[];
  /** The parameters with other numbers; whether they can be held is for the API to say. */
  withSettings(parameters: Parameters, settings: readonly Setting[]): unknown;
  /** How it is held, in one line. */
  summary(t: Texts<Code>, parameters: Parameters): string;
  /** What was seen in an attempt, in one line. */
  seen(t: Texts<Code>, seen: Attempt, lengths: LengthUnit): string;
  /** What else is held of an attempt, for whoever asks what is kept of them. */
  besides?(t: Texts<Code>, seen: Attempt): string | null;
  /** An attempt by itself, where it makes no mark yet: what it comes to, and what that is. */
  alone?(
    t: Texts<Code>,
    parameters: Parameters,
    seen: Attempt,
  ): { readonly written: Written; readonly what: string };
  /** What a saved attempt tells beside its mark. */
  remark?(t: Texts<Code>, seen: Attempt, mark: Mark): string | null;
  /** What it asks of an athlete, in a sentence or two. */
  asks(t: Texts<Code>, parameters: Parameters): string;
  lines(t: Texts<Code>, parameters: Parameters): SheetLines;
  /**
   * One worked example of its score, a sentence a line. What was seen is invented; what it amounts to is the protocol's
   * own answer with the parameters of the day, so that the paper never says another mark than the desk.
   */
  example(t: Texts<Code>, parameters: Parameters): readonly string[];
}
