import type { ReactNode } from "react";
import type { FoldedLane } from "../../../electron/domain/heats/heat.ts";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { LaneOf, ParametersOf, TestCode } from "../../../electron/domain/tests/registry.ts";
import type { HeatClock } from "../../sound/clock.ts";
import type { LiveKeys } from "./liveKeys.ts";
import type { HeatLane, LiveHeat } from "./types.ts";

/** A lane: who is in it, and where its taps have brought it. */
export interface LiveLane<Test extends TestCode = TestCode> {
  readonly lane: number;
  /** The key that belongs to the lane: "1" to "9", "0", "-", "=". */
  readonly key: string;
  /** Who is in it and what the desk knows of them. */
  readonly in: HeatLane;
  /** Folded from all taps, those not sent yet among them, at `elapsedMs`. */
  readonly state: FoldedLane<LaneOf<Test>>;
}

/** A tap of a test's own kinds (`electron/domain/heats/<test>.ts` lists them). */
export interface Tapping {
  /** Null: every lane. */
  readonly lane: number | null;
  readonly kind: string;
  readonly detail?: Readonly<Record<string, unknown>>;
  /** `timeStamp` of the native event; the moment of the call without it. */
  readonly timeStamp?: number;
  /** The heat's time, for what does not happen at the tap, such as a start after a count-in. */
  readonly atMs?: number;
}

/** A heat that runs, as its tool sees it. Renders again a few times a second, and at every tap at once. */
export interface Live<Test extends TestCode = TestCode> {
  readonly test: Test;
  readonly parameters: ParametersOf<Test>;
  readonly heat: LiveHeat;
  /** Lanes with somebody in them, in order. */
  readonly lanes: readonly LiveLane<Test>[];
  /** For beats, sounds and numbers that run: read it each frame, it is exact. */
  readonly clock: HeatClock;
  /** The heat's time of this rendering; below 0 during the count-in. */
  readonly elapsedMs: number;
  readonly lengths: LengthUnit;
  /** Shows a tap at once, keeps it, and sends it until the desk has it. Returns its id. */
  readonly tap: (tapping: Tapping) => string;
}

/** How one test is run live: what the frame (`Running.tsx`) shows around its lanes and in them. */
export interface LiveTool<Test extends TestCode> {
  /** What all lanes share, beside them: the clock, the beat, the stage. */
  readonly Stage: (props: { readonly live: Live<Test> }) => ReactNode;
  /**
   * What stands in a lane that is not done, under its number and name. With `press` it lies inside of a button, so it
   * may hold nothing to press then.
   */
  readonly Lane: (props: { readonly live: Live<Test>; readonly lane: LiveLane<Test> }) => ReactNode;
  /** What stands under the mark of a lane that is done. */
  readonly Done?: (props: { readonly live: Live<Test>; readonly lane: LiveLane<Test> }) => ReactNode;
  /** What the lane's key and a press anywhere on the lane do, at the native event's `timeStamp`. */
  readonly press?: (live: Live<Test>, lane: LiveLane<Test>, timeStamp: number) => void;
  /** Says what `press` does, for those who listen: "Stop lane 3, bib 12". */
  readonly usePressLabel?: () => (lane: LiveLane<Test>) => string;
  /** A second, rarer thing that a lane can do: a button of its own in the lane, and Shift with the lane's key. */
  readonly second?: {
    readonly useLabel: () => string;
    readonly press: (live: Live<Test>, lane: LiveLane<Test>, timeStamp: number) => void;
  };
  /** Keys of the tool's own besides; shown where they work. */
  readonly keys?: (live: Live<Test>) => LiveKeys;
  /**
   * Digits and Enter that came as fast as a scanner's but are nobody's bib today: they may have been typed. What was
   * typed must not be lost, and nothing may be entered before somebody says so.
   */
  readonly onStrayDigits?: (live: Live<Test>, digits: string) => void;
  /** How a lane looks that wants attention (two misses in a row): shape and word are the tool's own. */
  readonly isWarning?: (lane: LiveLane<Test>) => boolean;
  /** It makes no sound, so there is none to set. */
  readonly silent?: true;
  /** What stands beside the lanes needs little room. */
  readonly slim?: true;
  /** How wide a lane has to be to be usable, in rem; the frame fits as many beside each other as go. */
  readonly laneWidth?: number;
  /** No more lanes than these beside each other, however wide the screen is: what is wide can be large. */
  readonly mostBeside?: number;
}
