import { meanOf } from "./expected.ts";
import type { Athlete, DoneTurn, Moment, Running, Station } from "./hall.ts";

/** A turn that should be over for longer than this, in its own lengths, is a place that stands. Ours, no source. */
const mostLengths = 3;

/**
 * Adds the turns that nobody has told: where tests are keyed, only ends are known, and whoever has waited longest and could
 * start at the last end is at it since. A place that has been free for much longer than a turn takes is left as it is. What
 * is told by a call alone starts a change-over later.
 */
export function withUnseen(moment: Moment): Moment {
  const unseen = moment.hall.stations.flatMap((station) => unseenAt(moment, station));
  const called = moment.running.map((running) => fromStart(moment, running));
  return { ...moment, running: [...called, ...unseen] };
}

function fromStart({ hall, done }: Moment, running: Running): Running {
  const station = hall.stations.find(({ test }) => test === running.test);
  const isLive = done.some(({ test, from }) => test === running.test && from !== null);
  if (isLive || station === undefined) return running;
  return { ...running, since: Math.min(0, running.since + station.changeOver.median) };
}

function unseenAt(moment: Moment, station: Station): Running[] {
  const here = moment.done.filter(({ test }) => test === station.test);
  const isKeyed =
    here.length > 0 && here.slice(-station.places).every(({ heat, from }) => heat === null && from === null);
  if (!isKeyed || station.lanes > 1) return [];
  const busy = new Set(moment.running.flatMap(({ athletes }) => athletes));
  const running = moment.running.filter(({ test }) => test === station.test).length;
  const waiting = moment.athletes
    .filter(({ id, left, rested }) => left[0] === station.test && rested <= 0 && !busy.has(id))
    .filter(({ comes, arrives }) => comes >= 1 && arrives.until <= 0)
    .sort((a, b) => readyOf(a) - readyOf(b));
  return freed(here, station.places - running).flatMap((end, place) =>
    startedAt(station, end, waiting[place]),
  );
}

function freed(here: readonly DoneTurn[], places: number): number[] {
  return places <= 0 ? [] : here.slice(-places).map(({ until }) => until);
}

function startedAt(station: Station, end: number, next: Athlete | undefined): Running[] {
  if (next === undefined) return [];
  const since = Math.max(end + station.changeOver.median, readyOf(next));
  const isTooLong = -since > mostLengths * meanOf(station.turn);
  return since >= 0 || isTooLong ? [] : [{ test: station.test, athletes: [next.id], since }];
}

function readyOf({ rested, arrives }: Athlete): number {
  return Math.max(rested, arrives.until);
}
