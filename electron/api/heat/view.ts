import { msBetween } from "../../domain/heats/clock.ts";
import { clockOf } from "../../domain/heats/fold.ts";
import type { QueuePlace } from "../../domain/queue/queue.ts";
import { judge } from "../../domain/tests/judge.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { everybody, type Present } from "../../store/reads/present.ts";
import { absences } from "../../store/tables/absences.ts";
import { type KeptAttempt, standingAttempts } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { confirmedAttempts } from "../../store/tables/heat-events.ts";
import { lanesOf } from "../../store/tables/heat-lanes.ts";
import { endedHeats, type Heat, type Holder, liveHeat } from "../../store/tables/heats.ts";
import type { Desk } from "../door/desk.ts";
import type { Told } from "../door/shapes.ts";
import { type HeatAtHand, heatsAtHand } from "../lanes/at-hand.ts";
import {
  elapsedOf,
  type LoadedHeat,
  type LoadedLane,
  lanesAt,
  load,
  momentOf,
  requireHeat,
} from "../lanes/load.ts";
import { attemptView, personIn, tellOne } from "../marks/attempts.ts";
import { doubtsAbout } from "../marks/unanswered.ts";
import { typicalErrorsOf } from "../noise/errors.ts";
import { inCallOrder } from "../station/call-order.ts";
import { calledElsewhere, callerOf } from "../station/callers.ts";
import { keptUntilWrite } from "../station/kept-views.ts";
import { queueOf } from "../station/runners.ts";
import { isFixed } from "./make.ts";
import { isOver } from "./over.ts";
import { type HeatLaneView, type HeatView, type LiveHeat, type TableClock, viewSchema } from "./schemas.ts";

/** Numbers of queued athletes and of ended heats in a station's view. */
const soon = 12;
const lately = 5;

/** The input shared by several parts of the view, read once. */
interface Scene {
  readonly db: ReadableDb;
  readonly day: Day;
  readonly people: ReadonlyMap<number, Present>;
  readonly queue: readonly QueuePlace[];
  /** The day's heats that are gathered or run, at the table and at every device. */
  readonly heats: readonly HeatAtHand[];
  readonly lengths: LengthUnit;
}

/** Whose heat of which test is looked at. */
interface Seen {
  readonly test: TestCode;
  readonly lengths: LengthUnit;
  readonly holder: Holder;
}

/** What the stations without a heat of their own are told. */
const kept = keptUntilWrite<HeatView>();

/** Returns everything on one station's live screen, held to the schema; the clock of a heat is read last. */
export function view(desk: Desk, day: Day, seen: Seen): HeatView {
  const { db } = desk.store;
  const { test, lengths } = seen;
  // What is seen of the others is the same for everybody without one, but not for whoever has one.
  if (liveHeat(db, day.id, test, seen.holder) !== undefined) return viewSchema.parse(viewOf(desk, day, seen));
  const holder = callerOf(db, day, test, seen.holder);
  return kept(db, day, { test, now: desk.now().toISOString() }, [lengths, holder], () =>
    viewSchema.parse(viewOf(desk, day, seen)),
  );
}

function viewOf(desk: Desk, day: Day, { test, lengths, holder }: Seen): HeatView {
  const { db } = desk.store;
  const people = new Map(everybody(db, day.id).map((who) => [who.athleteId, who]));
  const now = desk.now().toISOString();
  const queue = inCallOrder(db, day, queueOf(db, day, test, now), { test, now });
  const scene: Scene = { db, day, people, queue, heats: heatsAtHand(db, day), lengths };
  const heat = liveHeat(db, day.id, test, holder);
  const loaded = heat === undefined ? null : load(db, heat);
  const waiting = waitingOf(scene, loaded);
  return {
    open: day.state === "open",
    next: nextOf(scene, { test, holder }, waiting),
    waiting: waiting.length,
    others: othersOf(scene, { test, holder }),
    ended: endedHeats(db, day.id, test, lately).map((each) => endedView(scene, each)),
    heat: loaded === null ? null : heatView(desk, scene, loaded),
  };
}

/** Returns the queue without those whom a lane holds, and without those who have one in this station's own heat. */
function waitingOf({ queue, heats }: Scene, loaded: LoadedHeat | null): QueuePlace[] {
  const held = new Set(heats.flatMap(({ athleteIds }) => athleteIds));
  const lanes = loaded === null || isOver(loaded) ? [] : loaded.lanes;
  const own = new Set(lanes.map(({ athleteId }) => athleteId));
  return queue.filter(({ athleteId }) => !held.has(athleteId) && !own.has(athleteId));
}

function nextOf(
  { db, day, people }: Scene,
  seen: Pick<Seen, "test" | "holder">,
  waiting: readonly QueuePlace[],
): HeatView["next"] {
  const missed = absences(db, day.id).filter(({ test }) => test === seen.test);
  const elsewhere = calledElsewhere(db, day, seen);
  return waiting.slice(0, soon).map(({ athleteId, waitingSince, readyAt, calledAt }) => ({
    who: personIn(people, athleteId),
    ...{ waitingSince, readyAt, calledAt, calledElsewhere: elsewhere.get(athleteId) ?? null },
    absences: missed.filter((absence) => absence.athleteId === athleteId).length,
  }));
}

/** Returns the heats of the test that others gather or run at the same time. */
function othersOf({ heats, people }: Scene, seen: Pick<Seen, "test" | "holder">): HeatView["others"] {
  return heats
    .filter(({ test, holder }) => test === seen.test && holder !== seen.holder)
    .map(({ athleteIds, ...heat }) => ({
      ...heat,
      bibs: athleteIds.map((athleteId) => personIn(people, athleteId).bib),
    }));
}

function endedView({ db, people }: Scene, heat: Heat): HeatView["ended"][number] {
  const bibs = lanesOf(db, heat.id).map(({ athleteId }) => personIn(people, athleteId).bib);
  const { ending = "done", reason = "", by = "", at = "" } = heat.ended ?? {};
  return { heatId: heat.id, ending, reason, by, at, bibs };
}

function heatView(desk: Desk, scene: Scene, loaded: LoadedHeat): LiveHeat {
  const { heat, parameters, events } = loaded;
  const lane = loaded.lanes.map((each) => laneView(scene, loaded, each));
  const allDone = isOver(loaded);
  const { ms, clock } =
    heat.zero === null ? { ms: null, clock: "monotonic" as const } : msBetween(heat.zero, momentOf(desk));
  return {
    heatId: heat.id,
    holder: heat.holder,
    device: scene.heats.find(({ heatId }) => heatId === heat.id)?.device ?? null,
    deviceIsThere: heat.holder !== null && desk.network?.isThere(heat.holder) === true,
    gatheredBy: heat.gatheredBy,
    test: heat.test,
    state: heat.state === "gathering" ? "gathering" : "running",
    lanes: heat.lanes,
    parameters,
    elapsedMs: ms,
    startDoubtMs: heat.startDoubtMs,
    clock,
    lane,
    events: [...events],
    allDone,
  };
}

function laneView(scene: Scene, loaded: LoadedHeat, lane: LoadedLane): HeatLaneView {
  const { db, day, queue, lengths } = scene;
  const { heat, events } = loaded;
  const { athleteId, variant } = lane;
  const told = tellOne(db, day, { athleteId, test: heat.test, variant }, lengths);
  const place = queue.find((each) => each.athleteId === athleteId);
  const begun = events.some((event) => event.lane === null || event.lane === lane.lane);
  return {
    lane: lane.lane,
    who: personIn(scene.people, athleteId),
    variant,
    prior: [...lane.prior],
    free: !begun && !isFixed(heat),
    calledAt: place?.calledAt ?? null,
    readyAt: place?.readyAt ?? null,
    told,
    entered: enteredOf(scene, lane),
    ...doubtsOf(scene, loaded, lane, told),
    trouble: troubleOf(loaded, lane),
  };
}

/** Returns the newest attempt of each result, as it is stored. */
function enteredOf({ people }: Scene, lane: LoadedLane): HeatLaneView["entered"] {
  const newest = new Map(lane.made.map((attempt) => [attempt.result, attempt]));
  return [...newest].map(([key, attempt]) => ({
    key,
    attempt: attemptView(storedFor(lane, attempt), personIn(people, attempt.athleteId)),
    corrected: lane.corrected.has(attempt.id),
  }));
}

/** Returns the last correction of an attempt by the same athlete, or the attempt itself. */
function storedFor(lane: LoadedLane, attempt: KeptAttempt): KeptAttempt {
  const correction = lane.corrections.find(({ replaces }) => replaces === attempt.id);
  return correction === undefined ? attempt : storedFor(lane, correction);
}

function doubtsOf(
  scene: Scene,
  loaded: LoadedHeat,
  lane: LoadedLane,
  told: Told | null,
): Pick<HeatLaneView, "doubts" | "doubted"> {
  if (told === null || lane.made.every((attempt) => attempt.void !== null)) {
    return { doubts: [], doubted: null };
  }
  const { db, day, lengths } = scene;
  const { test } = loaded.heat;
  return doubtsAbout({
    ...{ test, parameters: loaded.parameters, lengths, mark: told.mark },
    standing: standingAttempts(db, day.id, lane.athleteId, test).filter(
      ({ variant }) => variant === lane.variant,
    ),
    confirmed: confirmedAttempts(db, day.id),
    previous: told.news?.previous ?? null,
    error: typicalErrorsOf(db, day.id)[test],
  });
}

/** Returns why a result is no attempt: it is not believable, or somebody else entered the test meanwhile. */
function troubleOf(loaded: LoadedHeat, lane: LoadedLane): Sentence | null {
  if (clockOf(loaded.heat.test) === "own") return null;
  const folded = lanesAt(loaded, null).find((each) => each.lane === lane.lane);
  const entered = new Set(lane.made.map(({ result }) => result));
  const missing = (folded?.results ?? []).find(({ key }) => !entered.has(key));
  if (missing === undefined) return null;
  return (
    judge(loaded.heat.test, loaded.parameters, [missing.seen]).refusal ?? sentence("heat.keyedMeanwhile")
  );
}

/** Returns what the table's clock shows, and how long a heat has run by it. @throws Refusal for a heat of no open day */
export function tableClock(desk: Desk, heatId: string): TableClock {
  const { heat } = requireHeat(desk.store.db, heatId);
  const now = momentOf(desk);
  const { ms, boot } = now;
  return { ms, boot, elapsedMs: elapsedOf(heat, now), startDoubtMs: heat.startDoubtMs };
}
