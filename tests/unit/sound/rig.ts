import { cuesBetween } from "../../../electron/domain/heats/cues.ts";
import type { Cue } from "../../../electron/domain/tests/cue.ts";
import { createHeatClock, type HeatClock } from "../../../renderer/sound/clock.ts";
import type { ScheduledCue, SoundOutput, Timeline } from "../../../renderer/sound/schedule.ts";

/** A page and a sound card with clocks that a test sets; the card's zero is `cardZero` ms of the page's clock. */
export interface Rig {
  now: number;
  cardZero: number;
  leaps: number;
  awake: boolean;
  readonly clock: HeatClock;
  readonly output: SoundOutput;
  readonly scheduled: ScheduledCue[];
  /** What is still to be heard or was: taken back ones are gone. */
  readonly heard: { readonly cue: string; readonly when: number }[];
}

/** The heat's zero is at 10,000 ms of the page's clock. */
export function createRig(): Rig {
  const rig: Rig = {
    ...{ now: 4_000, cardZero: 3_000, leaps: 0, awake: true, scheduled: [], heard: [] },
    clock: createHeatClock({ zeroAt: 10_000, doubtMs: 0 }, () => rig.now),
    output: {
      toAudio: (ms) => (rig.awake ? (ms - rig.cardZero) / 1000 : null),
      now: () => (rig.now - rig.cardZero) / 1000,
      leaps: () => rig.leaps,
      play(cue, when) {
        const begin = Math.max(when, rig.output.now());
        const entry = { cue, when: begin };
        rig.heard.push(entry);
        return {
          when: begin,
          cancel() {
            if (begin <= rig.output.now()) return false;
            rig.heard.splice(rig.heard.indexOf(entry), 1);
            return true;
          },
        };
      },
    },
  };
  return rig;
}

const parameters = { bpm: 40, beatsPerRep: 2, missesToStop: 3 };

/** The push-up's cues at 40 beats a minute: a count-in of four from −6,000 ms on, then a beat every 1,500 ms. */
export const pushUps: Timeline = (from, until) => cuesBetween("push-up", parameters, from, until);

export function cuesUntil(untilMs: number): Cue[] {
  return cuesBetween("push-up", parameters, -6_000, untilMs);
}
