import {
  type LeagueSettings,
  type PlanSettings,
  planMost,
  planSettings,
  usualLeague,
} from "../../../../electron/domain/plan/settings.ts";
import { formatTime, parseTime } from "../../../../electron/domain/units.ts";
import { readClock } from "../clock.ts";
import type { Planned, PlannedStation } from "../types.ts";

/** Reads a whole number of the range; null where it is none. */
export function readCount(typed: string, least: number, most: number): number | null {
  const count = /^\d{1,4}$/.test(typed.trim()) ? Number(typed) : Number.NaN;
  return count >= least && count <= most ? count : null;
}

/** Writes seconds as a field holds them: "2:30". */
export function typedSeconds(seconds: number): string {
  return formatTime(Math.round(seconds) * 1000, false);
}

/** Reads a time ("2:30", "150") in whole seconds; null for an empty field, undefined where it is no time. */
export function readSeconds(typed: string): number | null | undefined {
  if (typed.trim() === "") return null;
  const read = parseTime(typed);
  return "ms" in read ? Math.round(read.ms / 1000) : undefined;
}

/** Returns what was planned as it is saved. Leagues that come as usual are left out: they follow the beginning. */
export function settingsOf(planned: Planned): PlanSettings {
  return planSettings.parse({
    ...planned,
    leagues: unusual(planned.leagues, planned.begins),
  });
}

/** Returns the leagues of which something was said. */
export function unusual<League extends LeagueSettings>(leagues: readonly League[], begins: string): League[] {
  return leagues.filter((each) => !isUsual(each, begins));
}

function isUsual({ league, number, from, until, comes }: LeagueSettings, begins: string): boolean {
  const usual = usualLeague(league, begins);
  return number === null && from === usual.from && until === usual.until && comes === usual.comes;
}

/** A league as it is typed; `comes` in hundredths. */
export interface TypedLeague {
  readonly league: string;
  readonly number: string;
  readonly from: string;
  readonly until: string;
  readonly comes: string;
  /** How many of it are on the list; null for one that was added here and has no name yet. */
  readonly listed: number | null;
}

export function typedLeague({
  league,
  number,
  from,
  until,
  comes,
  listed,
}: Planned["leagues"][number]): TypedLeague {
  return {
    league,
    number: String(number ?? listed),
    from,
    until,
    comes: String(Math.round(comes * 100)),
    listed,
  };
}

/** Returns a league that arrives from another time on; one that arrives all together goes on doing so. */
export function arrivingFrom(typed: TypedLeague, from: string): TypedLeague {
  return { ...typed, from, until: typed.until === typed.from ? from : typed.until };
}

/** Reads a typed league; null where a field can't be read. As many as are on the list stay so when the list changes. */
export function readLeague(typed: TypedLeague): LeagueSettings | null {
  const isListed = typed.listed !== null && ["", String(typed.listed)].includes(typed.number.trim());
  const number = isListed ? null : readCount(typed.number, 0, planMost.ofLeague);
  const comes = readCount(typed.comes, 0, 100);
  const [from, until] = [readClock(typed.from), readClock(typed.until)];
  const league = typed.league.trim();
  const isNumberBad = number === null && !isListed;
  if (league === "" || isNumberBad || comes === null || from === null || until === null) return null;
  return { league, number, from, until, comes: comes / 100 };
}

/** A station as it is typed. */
export interface TypedStation {
  readonly places: string;
  readonly lanes: string;
  readonly turn: string;
  readonly changeOver: string;
}

export function typedStation({ places, lanes, turn, changeOver }: PlannedStation): TypedStation {
  return {
    places: String(places),
    lanes: String(lanes),
    turn: typedSeconds(turn.median),
    changeOver: typedSeconds(changeOver.median),
  };
}

/** Reads a typed time of a station: null for one that stayed as it was known or assumed, undefined where it is no time. */
export function readTime(typed: string, { from, median }: PlannedStation["turn"]): number | null | undefined {
  return from !== "typed" && typed === typedSeconds(median) ? null : readSeconds(typed);
}
