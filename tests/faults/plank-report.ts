import { cuesBetween } from "../../electron/domain/heats/cues.ts";
import { defaultParameters } from "../../electron/domain/tests/registry.ts";
import { voices } from "../../renderer/sound/voices.ts";
import { shareOf } from "./clock-measure.ts";
import type { PlankRun } from "./planks.ts";

/** What differs from the plank whose network was fine, and the figures to print. */
export interface PlankReport {
  readonly wrong: readonly string[];
  readonly lines: readonly string[];
}

interface Heard {
  readonly cue: string;
  readonly atMs: number;
  /** How much later than it should it was heard, in ms. */
  readonly offMs: number;
}

/** The first cue is due at the tap itself, and is late by the sound's own way to the ear. */
const atTheTapMs = -3_000;
/** Two planks at the same time on a machine that does other things too: what is nobody's fault of the network, in ms. */
const besidesMs = 40;

/** Compares planks with the first, whose network was fine: what sounded, what was shown, and the marks. */
export function reportPlanks([fine, ...others]: readonly PlankRun[]): PlankReport {
  if (fine === undefined) throw new Error("There is no plank to compare with.");
  const wrong = [
    ...ownFaults(fine),
    ...others.flatMap((each) => [...ownFaults(each), ...against(fine, each)]),
  ];
  return { wrong, lines: [fine, ...others].flatMap(linesOf) };
}

/** Every cue once and in its place; every second and stage shown; every mark what was held. */
function ownFaults(run: PlankRun): string[] {
  const [heard, expected] = [heardOf(run), expectedOf(run)];
  const same = JSON.stringify(heard.map(nameOf)) === JSON.stringify(expected.map(nameOf));
  return [
    ...(same ? [] : [`${run.death}: heard ${heard.map(nameOf).join(" ")}`]),
    ...secondsMissing(run).map((text) => `${run.death}: ${text} was not shown`),
  ];
}

function against(fine: PlankRun, run: PlankRun): string[] {
  const later = worstOf(run) - worstOf(fine);
  return [
    ...(JSON.stringify(run.marks) === JSON.stringify(fine.marks)
      ? []
      : [`${run.death}: marks ${run.marks.join(" ")}`]),
    ...(later <= besidesMs ? [] : [`${run.death}: cues off by ${later.toFixed(1)} ms more`]),
    ...(stagesOf(run) === stagesOf(fine) ? [] : [`${run.death}: stages ${stagesOf(run)}`]),
  ];
}

function nameOf({ cue, atMs }: Pick<Heard, "cue" | "atMs">): string {
  return `${cue}@${atMs / 1_000}`;
}

/** What should sound until the last lane is down. */
function expectedOf({ plan: { stopsMs } }: PlankRun) {
  return cuesBetween("core", defaultParameters("core"), atTheTapMs, Math.max(...stopsMs));
}

/** What sounded, each by the first note of a voice, with the cue that it is nearest to. */
function heardOf(run: PlankRun): Heard[] {
  const expected = expectedOf(run);
  return run.recorded.notes
    .filter(({ takenBack, heardAt }) => !takenBack && heardAt <= run.zeroAt + Math.max(...run.plan.stopsMs))
    .flatMap(({ wave, hertz, heardAt }) => {
      const cue = Object.entries(voices).find(
        ([, [note]]) => note?.wave === wave && note.hertz === hertz,
      )?.[0];
      if (cue === undefined) return [];
      const ms = heardAt - run.zeroAt;
      const near = expected
        .filter((each) => each.cue === cue)
        .toSorted((a, b) => Math.abs(a.atMs - ms) - Math.abs(b.atMs - ms))[0];
      return [{ cue, atMs: near?.atMs ?? Math.round(ms), offMs: ms - (near?.atMs ?? ms) }];
    })
    .toSorted((a, b) => a.atMs - b.atMs);
}

function worstOf(run: PlankRun): number {
  return Math.max(...offOf(run));
}

function offOf(run: PlankRun): number[] {
  return heardOf(run).flatMap(({ atMs, offMs }) => (atMs === atTheTapMs ? [] : [Math.abs(offMs)]));
}

/** How late each whole second was shown. */
function secondsShown({ recorded, zeroAt }: PlankRun): ReadonlyMap<number, number> {
  const all = recorded.shown.flatMap(({ what, text, at }) => {
    const [, minutes, seconds] = /^(\d+):(\d\d)$/.exec(text) ?? [];
    if (what !== "clock" || minutes === undefined) return [];
    const second = Number(minutes) * 60 + Number(seconds);
    return [[second, at - zeroAt - second * 1_000] as const];
  });
  return new Map(all);
}

function secondsMissing(run: PlankRun): string[] {
  const shown = secondsShown(run);
  const whole = Math.floor(Math.max(...run.plan.stopsMs) / 1_000);
  return Array.from({ length: whole + 1 }, (_, second) => second)
    .filter((second) => !shown.has(second))
    .map((second) => `second ${second}`);
}

function stagesOf({ recorded, zeroAt }: PlankRun): string {
  const stages = recorded.shown.filter(({ what }) => what === "stage");
  return stages
    .map(({ text, at }) => `${Math.max(0, Math.round((at - zeroAt) / 1_000))} s ${text}`)
    .join("; ");
}

function linesOf(run: PlankRun): string[] {
  const { death, marks, heldMs, doneHere, caughtUpMs, plan } = run;
  const late = [...secondsShown(run).values()];
  const taps = heldMs.map((ms, index) => ms - (plan.stopsMs[index] ?? Number.NaN));
  return [
    `${death}: ${heardOf(run).length} cues, off by ${spread(offOf(run))}`,
    `  ${late.length} seconds shown, late by ${spread(late)}; ${stagesOf(run).split(";").length} stages`,
    `  marks ${marks.join(" ")}; keys after their planned moment ${taps.join(" ")} ms`,
    `  stopped by the end of the dead time: ${doneHere}; then all at the table after ${(caughtUpMs / 1_000).toFixed(1)} s`,
  ];
}

function spread(values: readonly number[]): string {
  return `median ${shareOf(values, 0.5).toFixed(1)}, max ${shareOf(values, 1).toFixed(1)} ms`;
}
