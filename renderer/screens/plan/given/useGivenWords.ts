import { useTranslation } from "react-i18next";
import { headCount, type Planned, type PlannedLeague, type PlannedStation } from "../types.ts";
import { typedSeconds } from "./typed.ts";
import { useWhen } from "./useWhen.ts";

/** The lines that say what the plan reckons with. */
interface GivenWords {
  readonly hours: readonly string[];
  readonly leagues: readonly string[];
  readonly station: (station: PlannedStation) => readonly string[];
  readonly rest: readonly string[];
  readonly calls: readonly string[];
}

/** So many leagues have a line each; of more, the number is said. */
const mostLeagues = 4;

/** Returns the lines on what is planned, in the current language. */
export function useGivenWords(planned: Planned): GivenWords {
  const { t } = useTranslation("plan");
  const whenOf = useWhen();
  const { begins, breaks, leagues, judges, middleIsFree, boundMinutes, restMinutes } = planned;
  const count = headCount(planned);
  const likely = Math.round(
    leagues.reduce((sum, { number, listed, comes }) => sum + (number ?? listed) * comes, 0),
  );
  return {
    hours: [
      t("hours.from", { begins }),
      ...breaks.map(({ from, until }) => t("hours.pause", { from, until })),
    ],
    leagues: [t("leagues.count", { count, likely }), ...whenLines()],
    station: stationLines,
    rest: [t("given.restLine", { count: restMinutes })],
    calls: [
      judges === null ? t("calls.enough") : t("calls.judgesLine", { count: judges }),
      middleIsFree ? t("calls.free") : t("calls.held"),
      boundMinutes === 0 ? t("calls.noBound") : t("calls.boundLine", { count: boundMinutes }),
    ],
  };

  /** One line where all come at the same time, else one for each of the first leagues. */
  function whenLines(): string[] {
    const [first, ...others] = leagues;
    if (first === undefined) return [];
    const isOneTime = others.every(({ from, until }) => from === first.from && until === first.until);
    if (isOneTime) return [t("leagues.all", { count: leagues.length, when: whenOf(first) })];
    const more = leagues.length - mostLeagues;
    const lines = leagues.slice(0, mostLeagues).map(leagueLine);
    return more > 0 ? [...lines, t("leagues.others", { count: more })] : lines;
  }

  function leagueLine(league: PlannedLeague): string {
    const { number, listed, comes } = league;
    // Where one league is less sure to come than another, the count of all together does not say which.
    const isAlike = leagues.every((other) => other.comes === comes);
    return t(isAlike ? "leagues.line" : "leagues.likelyLine", {
      ...{ league: league.league, number: number ?? listed, when: whenOf(league) },
      percent: Math.round(comes * 100),
    });
  }

  function stationLines({ places, lanes, turn, changeOver }: PlannedStation): string[] {
    const room = [t("station.placeCount", { count: places }), t("station.laneCount", { count: lanes })];
    const times = t("station.times", {
      ...{ turn: typedSeconds(turn.median), changeOver: typedSeconds(changeOver.median) },
    });
    return [room.join(", "), `${times}, ${source([turn, changeOver])}`];
  }

  function source(times: readonly PlannedStation["turn"][]): string {
    if (times.every(({ from }) => from === "typed")) return t("source.shortTyped");
    const earlier = times.find(({ from }) => from === "earlier");
    return earlier === undefined
      ? t("source.shortAssumed")
      : t("source.shortEarlier", { count: earlier.turns });
  }
}
