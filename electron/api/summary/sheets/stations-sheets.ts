import type { SummaryDay, SummaryPerson } from "../../../domain/summary/day.ts";
import { inOrder } from "../../../domain/summary/roll.ts";
import type { Spread } from "../../../domain/summary/spread.ts";
import type { StationTimes, TurnTime } from "../../../domain/summary/turns.ts";
import { type TestCode, testCodes } from "../../../domain/tests/registry.ts";
import { column, type SheetColumn, type SummarySheet, sheetOf } from "./sheet.ts";
import { inSeconds } from "./values.ts";
import { whoColumns } from "./who.ts";

interface Line {
  readonly station: StationTimes;
  readonly measure: "at_work" | "per_athlete";
  readonly spread: Spread | null;
}

const measures =
  "`at_work` at work in a lane of a live heat, by the monotonic clock: from the common start, or the lane's first tap, " +
  "to its last tap; `per_athlete` of the station's time: from the end of one turn to the end of the next, shared among " +
  "its athletes, by the computer's clock at entry (waiting and fetching are in it; what was keyed late from paper blurs it)";

const columns: SheetColumn<Line>[] = [
  column("test", "code", "The station's test", ({ station }) => station.test),
  column("measure", "code", measures, ({ measure }) => measure),
  column("athletes", "", "How many athletes this is worked out of", ({ spread }) => spread?.count ?? 0),
  column("median", "s", "Half took less, half took more", ({ spread }) => inSeconds(spread?.median)),
  column("lower_quartile", "s", "A quarter took less; empty of fewer than four", ({ spread }) =>
    inSeconds(spread?.lower),
  ),
  column("upper_quartile", "s", "A quarter took more; empty of fewer than four", ({ spread }) =>
    inSeconds(spread?.upper),
  ),
  column("shortest", "s", "The shortest", ({ spread }) => inSeconds(spread?.lowest)),
  column("longest", "s", "The longest", ({ spread }) => inSeconds(spread?.highest)),
  column(
    "not_known",
    "athletes",
    "per_athlete alone: the first turn of the day, turns after a pause of more than 20 minutes, or after the clock was set back",
    ({ station, measure }) => (measure === "per_athlete" ? station.leftOut : null),
  ),
  column(
    "from_sheets",
    "athletes",
    "Athletes whose results came from sheets alone, which say nothing about time",
    ({ station }) => station.fromSheets,
  ),
];

/** Makes `stations.csv`: each station's time per athlete. */
export function stationsSheet(stations: readonly StationTimes[]): SummarySheet {
  const lines = stations.flatMap((station): Line[] => [
    { station, measure: "at_work", spread: station.atWork },
    { station, measure: "per_athlete", spread: station.perAthlete },
  ]);
  return sheetOf(
    "stations.csv",
    "One station and way of measuring how long an athlete took.",
    columns,
    lines,
  );
}

interface TimeLine {
  readonly who: SummaryPerson;
  readonly test: TestCode;
  readonly work: number | null;
  readonly share: number | null;
}

const timeColumns: SheetColumn<TimeLine>[] = [
  ...whoColumns<TimeLine>(({ who }) => who),
  column("test", "code", "The station's test", ({ test }) => test),
  column("at_work", "s", "as measure in stations.csv; empty: not known", ({ work }) => inSeconds(work)),
  column("per_athlete", "s", "as measure in stations.csv; empty: not known", ({ share }) => inSeconds(share)),
];

/** Makes `station_times.csv`: the times behind stations.csv, where one is known. */
export function stationTimesSheet(
  { people, laneTimes }: SummaryDay,
  turns: readonly TurnTime[],
): SummarySheet {
  const lines = inOrder(people).flatMap((who) =>
    testCodes.flatMap((test): TimeLine[] => {
      const isOwn = (each: { athleteId: number; test: TestCode }) =>
        each.athleteId === who.athleteId && each.test === test;
      const share = turns.find(isOwn)?.ms ?? null;
      const works = laneTimes.filter(isOwn).map(({ ms }) => ms);
      const known = works.length === 0 ? [null] : works;
      return known.every((work) => work === null) && share === null
        ? []
        : known.map((work) => ({ who, test, work, share }));
    }),
  );
  return sheetOf(
    "station_times.csv",
    "One athlete at one station: how long it took, where that is known.",
    timeColumns,
    lines,
  );
}
