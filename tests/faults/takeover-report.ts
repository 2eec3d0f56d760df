import { toldDoubt } from "../../electron/domain/heats/offset.ts";
import { shareOf } from "./clock-measure.ts";
import type { Takeover, TakeoverNetwork } from "./takeovers.ts";

/** What came of takeovers: how often a bound was broken, and the figures to print. */
export interface TakeoverReport {
  readonly wrong: readonly string[];
  readonly lines: readonly string[];
}

/** A beat that moves by less than this is not planned anew (`sound/schedule.ts`), in ms. */
const unheardMs = 5;

/** Holds takeovers to their bounds, each wider by no more than what the measuring itself may err. */
export function reportTakeovers(all: readonly Takeover[], network: TakeoverNetwork): TakeoverReport {
  const wrong = all.flatMap((each) =>
    [
      [
        Math.abs(each.secondErrorMs) > each.halfTripMs + each.secondMeasuredToMs,
        "beyond half the round trip",
      ],
      [
        !(Math.abs(each.lookErrorMs) <= each.lookHalfTripMs + each.secondMeasuredToMs),
        "a look beyond half its round trip",
      ],
      [
        each.startDoubtMs === null ||
          Math.abs(each.startErrorMs) > each.startDoubtMs + each.startMeasuredToMs,
        "a start beyond its doubt",
      ],
      [
        Math.abs(each.fromTapMs) > each.doubtMs + each.startMeasuredToMs + each.secondMeasuredToMs,
        "off the tap by more than is told",
      ],
      [Math.abs(each.movedMs) > unheardMs, "the starter's clock moved"],
      [!isToldRight(each), "not told right"],
      [network === "quick" && each.told !== "", "told where the network is quick"],
    ].flatMap(([is, what]) => (is === true ? [`${String(what)}: ${JSON.stringify(each)}`] : [])),
  );
  return { wrong, lines: linesOf(all) };
}

/** Above 50 ms the screen names a time that is no shorter than the doubt; otherwise it says nothing. */
function isToldRight({ doubtMs, told }: Takeover): boolean {
  const seconds = toldDoubt(doubtMs);
  if (seconds === null) return told === "";
  return told.includes(seconds.toFixed(1)) && seconds * 1_000 >= doubtMs;
}

function linesOf(all: readonly Takeover[]): string[] {
  const of = (pick: (each: Takeover) => number) => spread(all.map(pick));
  const apart = ({ secondErrorMs, there, back }: Takeover) => Math.abs(secondErrorMs - (back - there) / 2);
  const kept = all.filter(({ keptMs }) => keptMs > 0);
  const told = all.filter(({ doubtMs }) => toldDoubt(doubtMs) !== null);
  return [
    `delays: there ${of(({ there }) => there)}, back ${of(({ back }) => back)}`,
    `second screen off the table's clock: ${of(({ secondErrorMs }) => Math.abs(secondErrorMs))}`,
    `  half the round trip: ${of(({ halfTripMs }) => halfTripMs)}`,
    `  largest part of it: ${shareOf(all.map(partOfTrip), 1).toFixed(3)}`,
    `  apart from half of (back - there): ${of(apart)}`,
    `one look by heat.clock off the table's clock: ${of(({ lookErrorMs }) => Math.abs(lookErrorMs))}`,
    `  half its round trip: ${of(({ lookHalfTripMs }) => lookHalfTripMs)}`,
    `start at the table off the tap: ${of(({ startErrorMs }) => Math.abs(startErrorMs))}`,
    `  its doubt: ${of(({ startDoubtMs }) => startDoubtMs ?? Number.POSITIVE_INFINITY)}`,
    `  of ${kept.length} that were held up or lost (${spread(kept.map(({ keptMs }) => keptMs))}): ` +
      spread(kept.map(({ startErrorMs }) => Math.abs(startErrorMs))),
    `second screen off the tap: ${of(({ fromTapMs }) => Math.abs(fromTapMs))}, doubt ${of(({ doubtMs }) => doubtMs)}`,
    `starter's clock moved: ${of(({ movedMs }) => Math.abs(movedMs))}`,
    `above 50 ms, and told so: ${told.length}; below: ${all.length - told.length}`,
    `measured to: ${of(({ startMeasuredToMs, secondMeasuredToMs }) => Math.max(startMeasuredToMs, secondMeasuredToMs))}`,
  ];
}

function partOfTrip({ secondErrorMs, halfTripMs }: Takeover): number {
  return Math.abs(secondErrorMs) / halfTripMs;
}

function spread(values: readonly number[]): string {
  const [middle, most, worst] = [0.5, 0.95, 1].map((share) => shareOf(values, share).toFixed(1));
  return `median ${middle}, p95 ${most}, max ${worst} ms`;
}
