import type { Minute } from "./minute.ts";

/** How a run of the metronome stands against its ideal grid. */
export interface GridReport {
  readonly beats: number;
  readonly twice: readonly number[];
  readonly leftOut: readonly number[];
  /** The beat that is furthest from where it should be heard, by the page's clock. */
  readonly worstMs: number;
  /** The most by which the sound device itself was off its own even pace, which nobody can know before it happens. */
  readonly strayedMs: number;
  /** How much the error grows in a minute. */
  readonly driftMsPerMinute: number;
  /** The step between two beats that differs most from an even one, by the audio clock alone. */
  readonly unevenMs: number;
  /** How many of the beats were heard on the audio thread, and the one whose onset was furthest from its time. */
  readonly heard: number;
  readonly heardOffMs: number;
  readonly lines: readonly string[];
}

/**
 * Holds the beats until `untilMs` of the heat against the grid. What is heard when is taken from a straight line through
 * all of the system's output time stamps of the run, which the metronome, knowing only the past, can't have had.
 */
export function gridReport(run: Minute, untilMs: number): GridReport {
  const all = run.scheduled.filter(({ atMs }) => atMs <= untilMs);
  // Planned anew, a beat is heard as it was planned last.
  const beats = [...new Map(all.map((beat) => [beat.atMs, beat])).values()].sort((a, b) => a.atMs - b.atMs);
  const sounded = beats.flatMap(({ atMs, idealMs, when }) =>
    when === null ? [] : [{ atMs, idealMs, when }],
  );
  const stamps = run.stamps.filter(([audio, page]) => audio > 0 && page > 0);
  const card = lineThrough(stamps);
  const errors = sounded.map(({ when, idealMs }) => card.at(when) - idealMs);
  const trend = lineThrough(sounded.map(({ atMs }, index) => [atMs / 60_000, errors[index] ?? 0] as const));
  const onsets = sounded.map(({ when }) => nearest(run.heard, when) - when);
  const figures = {
    beats: beats.length,
    twice: all.map(({ atMs }) => atMs).filter((atMs, place, every) => every.indexOf(atMs) !== place),
    leftOut: beats.filter(({ when }) => when === null).map(({ atMs }) => atMs),
    worstMs: worstOf(errors),
    strayedMs: worstOf(stamps.map(([audio, page]) => card.at(audio) - page)),
    driftMsPerMinute: trend.slope,
    unevenMs: worstOf(steps(sounded)),
    heard: onsets.filter((off) => Math.abs(off) < 0.1).length,
    heardOffMs: worstOf(onsets) * 1000,
  };
  return { ...figures, lines: linesOf(figures, card, run) };
}

type Figures = Omit<GridReport, "lines">;

function linesOf(figures: Figures, card: Line, { hangs, hiddenStamps }: Minute): string[] {
  const { beats, heard, worstMs, strayedMs, driftMsPerMinute, unevenMs, heardOffMs } = figures;
  return [
    `${beats} beats at 40 a minute; the page hung ${hangs.count} times, ${hangs.longest.toFixed(0)} ms at worst,`,
    `  and was looked at ${hiddenStamps} times while hidden`,
    `worst error against the grid ${worstMs.toFixed(3)} ms, drift ${driftMsPerMinute.toFixed(3)} ms a minute`,
    `  where the sound device strayed by ${strayedMs.toFixed(3)} ms`,
    `worst step between beats ${unevenMs.toFixed(3)} ms off by the audio clock,`,
    `  which runs ${((1 - card.slope / 1000) * 1e6).toFixed(1)} millionths fast against the page's`,
    `${heard} heard on the audio thread, ${heardOffMs.toFixed(3)} ms off their times at worst`,
  ];
}

/** How far each step from one beat to the next is from that of the grid, in ms. */
function steps(beats: readonly { readonly atMs: number; readonly when: number }[]): number[] {
  return beats.slice(1).map((beat, index) => {
    const before = beats[index] ?? beat;
    return (beat.when - before.when) * 1000 - (beat.atMs - before.atMs);
  });
}

function worstOf(errors: readonly number[]): number {
  return Math.max(...errors.map(Math.abs));
}

function nearest(times: readonly number[], wanted: number): number {
  const gap = (time: number) => Math.abs(time - wanted);
  return times.reduce((best, time) => (gap(time) < gap(best) ? time : best), Number.POSITIVE_INFINITY);
}

interface Line {
  readonly slope: number;
  at(x: number): number;
}

/** The least-squares line. */
function lineThrough(points: readonly (readonly [number, number])[]): Line {
  const mean = (pick: 0 | 1) => points.reduce((sum, point) => sum + point[pick], 0) / points.length;
  const [x, y] = [mean(0), mean(1)];
  const across = points.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0);
  const slope = across / points.reduce((sum, point) => sum + (point[0] - x) ** 2, 0);
  return { slope, at: (place) => y + slope * (place - x) };
}
