import type { ReactNode } from "react";
import type { FoldedLane } from "../../../electron/domain/heats/heat.ts";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { LaneOf, ParametersOf, TestCode } from "../../../electron/domain/tests/registry.ts";
import type { HeatClock } from "../../sound/clock.ts";
import type { LiveKeys } from "./liveKeys.ts";
import type { HeatLane, LiveHeat } from "./types.ts";

/** A lane: its athlete, and its state by its taps. */
export interface LiveLane<Test extends TestCode = TestCode> {
  readonly lane: number;
  /** The key that belongs to the lane: "1" to "9", "0", "-", "=". */
  readonly key: string;
  /** The athlete, and the desk's facts about them. */
  readonly in: HeatLane;
  /** Folded from all taps, unsent ones included, at `elapsedMs`. */
  readonly state: FoldedLane<LaneOf<Test>>;
}

/** A tap of a test's own kinds (`electron/domain/tests/<test>/live.ts` lists them). */
export interface Tapping {
  /** Null: every lane. */
  readonly lane: number | null;
  readonly kind: string;
  readonly detail?: Readonly<Record<string, unknown>>;
  /** `timeStamp` of the native event; without it the moment of the call. */
  readonly timeStamp?: number;
  /** The heat's time, for an event not at the tap itself, such as a start after a count-in. */
  readonly atMs?: number;
}

/** A running heat for its tool. Renders again a few times a second, and immediately at every tap. */
export interface Live<Test extends TestCode = TestCode> {
  readonly test: Test;
  readonly parameters: ParametersOf<Test>;
  readonly heat: LiveHeat;
  /** Lanes with an athlete, in order. */
  readonly lanes: readonly LiveLane<Test>[];
  /** For beats, sounds and running numbers: read it each frame, it is exact. */
  readonly clock: HeatClock;
  /** The heat's time at this rendering; below 0 during the count-in. */
  readonly elapsedMs: number;
  readonly lengths: LengthUnit;
  /** Shows a tap at once, stores it, and sends it until the desk has it. Returns its id. */
  readonly tap: (tapping: Tapping) => string;
  /** Undoes a tap, at once here and then at the desk. */
  readonly takeBack: (eventId: string) => void;
}

/** Props of a tool's stage. */
export interface StageProps<Test extends TestCode> {
  readonly live: Live<Test>;
  /** Opens the correction of what is stored of a result, by the result's key; missing where it can't be. */
  readonly correct?: (key: string) => void;
  /** The result of whoever was done last, where the lanes that say it are out of sight. */
  readonly last?: ReactNode;
}

/** Props of a tool's content of one lane. */
export interface LaneProps<Test extends TestCode> extends StageProps<Test> {
  readonly lane: LiveLane<Test>;
}

/** One test's live run: the content that the frame (`Running.tsx`) shows around its lanes and in them. */
export interface LiveTool<Test extends TestCode> {
  /** The part shared by all lanes, beside them: the clock, the beat, the stage. */
  readonly Stage: (props: StageProps<Test>) => ReactNode;
  /** The content of an unfinished lane, under its number and name; without controls where `press` makes it a button. */
  readonly Lane: (props: LaneProps<Test>) => ReactNode;
  /** The content under the mark of a finished lane. */
  readonly Done?: (props: LaneProps<Test>) => ReactNode;
  /** The answers to what a finished lane asks, in place of its correction; null where it asks nothing. */
  readonly answers?: (props: LaneProps<Test>) => ReactNode;
  /** The action of the lane's key and of a press anywhere on the lane, at the native event's `timeStamp`. */
  readonly press?: (live: Live<Test>, lane: LiveLane<Test>, timeStamp: number) => void;
  /** Describes `press` for screen readers: "Stop lane 3, bib 12". */
  readonly usePressLabel?: () => (lane: LiveLane<Test>) => string;
  /** A lane's second, rarer action: a button of its own in the lane, and Shift with the lane's key. */
  readonly second?: {
    readonly useLabel: () => string;
    readonly press: (live: Live<Test>, lane: LiveLane<Test>, timeStamp: number) => void;
  };
  /** typed: digits alone are typed into something, so a lane's key takes Shift. */
  readonly digits?: "typed";
  /** The tool's other keys; shown where they work. */
  readonly keys?: (live: Live<Test>) => LiveKeys;
  /**
   * Handles digits and Enter as fast as a scanner's that are nobody's bib today. They may have been typed: they must
   * not be lost, and nothing may be entered before somebody confirms.
   */
  readonly onStrayDigits?: (live: Live<Test>, digits: string) => void;
  /** True for a lane that wants attention (two misses in a row): shape and word are the tool's own. */
  readonly isWarning?: (lane: LiveLane<Test>) => boolean;
  /** Returns the length in grains that a tap took, by which its undoing is named; null for other taps. */
  readonly lengthOf?: (event: LiveHeat["events"][number]) => number | null;
  /** True if it makes no sound, so that there is none to set. */
  readonly silent?: true;
  /** True if the part beside the lanes needs little room. */
  readonly slim?: true;
  /** Least usable width of a lane, in rem; the frame puts as many side by side as fit. */
  readonly laneWidth?: number;
  /** Most lanes side by side, however wide the screen is: wide ones can be large. */
  readonly mostBeside?: number;
}
