import { z } from "zod";
import { mostLanes } from "../../domain/heats/heat.ts";
import { oldestStartMs } from "../../domain/heats/start.ts";
import {
  attemptSchema,
  calledElsewhereSchema,
  sentenceSchema,
  stationPersonSchema,
  testSchema,
  toldSchema,
} from "../door/shapes.ts";
import { heatAtHandSchema } from "../lanes/at-hand.ts";

/** The schemas of live heats. Instants are ISO 8601; ms count from the heat's time 0. */
export const heatIdSchema = z.uuid();
export const laneNumberSchema = z.int().min(1).max(mostLanes);

/** The table's monotonic clock, and by it that of a heat as its view tells it. */
export const clockSchema = z.object({
  ms: z.number(),
  boot: z.string(),
  elapsedMs: z.number().nullable(),
  startDoubtMs: z.number().nullable(),
});

const agoMsSchema = z.number().min(0).max(oldestStartMs);

/** The tap that starts a heat; see `domain/heats/start.ts`. */
export const startSchema = z.object({
  heatId: heatIdSchema,
  startedAgoMs: agoMsSchema,
  tapped: z
    .object({ ms: z.number(), boot: z.string().max(100), doubtMs: agoMsSchema })
    .nullable()
    .default(null),
});

const atMsSchema = z.number().min(-86_400_000).max(864_000_000);

/** A tap as sent; `kind` and `detail` are those of the test's own taps. */
export const tapSchema = z.object({
  id: z.uuid(),
  lane: laneNumberSchema.nullable(),
  kind: z.string().max(20),
  /** By the tapper's clock, anchored to the heat's `elapsedMs`; stored in whole ms. */
  atMs: atMsSchema,
  detail: z.unknown().default({}),
});

/** taken: had an effect; idle: stored without one; known: a retry, stored before. */
export const tappedSchema = z.object({
  events: z.array(z.object({ id: z.string(), outcome: z.enum(["taken", "idle", "known"]) })),
});

const eventSchema = z.object({
  id: z.string(),
  lane: z.int().nullable(),
  kind: z.string(),
  atMs: z.int(),
  detail: z.unknown(),
  by: z.string(),
  at: z.string(),
});

const laneSchema = z.object({
  lane: z.int(),
  who: stationPersonSchema,
  variant: z.string(),
  /** Today's standing attempts of the test from outside this heat: fold them in as they are. */
  prior: z.array(z.unknown()),
  /** True if the athlete can still be changed. */
  free: z.boolean(),
  calledAt: z.string().nullable(),
  /** End of the rest before this test; null once they have nothing more to do here. */
  readyAt: z.string().nullable(),
  /** Today's mark, including this heat's own attempts; null without any. */
  told: toldSchema.nullable(),
  /** What is stored of each result that this heat entered, by its key: the newest attempt, void if it was cancelled. */
  entered: z.array(z.object({ key: z.string(), attempt: attemptSchema, corrected: z.boolean() })),
  /** Results entered that deserve a second look. */
  doubts: z.array(sentenceSchema),
  /** The attempt that they are about; null without any. */
  doubted: z.string().nullable(),
  /** The reason why a result was not entered, and what to do about it; null when all were. */
  trouble: sentenceSchema.nullable(),
});

const heatSchema = z.object({
  heatId: z.string(),
  test: testSchema,
  state: z.enum(["gathering", "running"]),
  /** Null: the table. */
  holder: z.string().nullable(),
  /** The holder's name; null for the table, and for a device that is no longer joined. */
  device: z.string().nullable(),
  /** True while the device that holds it is joined and was heard of lately: then the heat sounds there. */
  deviceIsThere: z.boolean(),
  /** Initials of whoever called the first of it; empty for a heat of before they were kept. */
  gatheredBy: z.string(),
  /** Number of lanes; those missing in `lane` are free. */
  lanes: z.int(),
  /** The frozen parameters; parse with the test's own schema. */
  parameters: z.unknown(),
  /** Ms since time 0 when this answer was made, below 0 during the count-in; null before the start. */
  elapsedMs: z.number().nullable(),
  /** How far the table may be off about the start, in ms; null: nobody knows, or before it. */
  startDoubtMs: z.number().nullable(),
  /** wall: the computer rebooted since the start, and the time is only as right as its clock. */
  clock: z.enum(["monotonic", "wall"]),
  lane: z.array(laneSchema),
  /** All taps in order of arrival: fold them to get each lane's state. */
  events: z.array(eventSchema),
  /** True if somebody was in a lane and everybody is done or set aside: the heat can end. */
  allDone: z.boolean(),
});

export const viewSchema = z.object({
  /** True if the day is open. */
  open: z.boolean(),
  heat: heatSchema.nullable(),
  /** The next athletes in the queue, without those in lanes. */
  next: z.array(
    z.object({
      who: stationPersonSchema,
      waitingSince: z.string(),
      readyAt: z.string(),
      calledAt: z.string().nullable(),
      calledElsewhere: calledElsewhereSchema,
      /** Number of no-shows after a call to this test. */
      absences: z.int(),
    }),
  ),
  /** How many wait in all: `next` names the first of them. */
  waiting: z.int(),
  /** The heats of this test that others gather or run: those in their lanes are not in `next`. */
  others: z.array(
    heatAtHandSchema.extend({
      /** Of whom its lanes hold now, by lane. */
      bibs: z.array(z.int().nullable()),
    }),
  ),
  /** The latest ended heats of this test, newest first. */
  ended: z.array(
    z.object({
      heatId: z.string(),
      ending: z.enum(["done", "called-off"]),
      reason: z.string(),
      by: z.string(),
      at: z.string(),
      /** Bibs by lane. */
      bibs: z.array(z.int().nullable()),
    }),
  ),
});

export type TableClock = z.infer<typeof clockSchema>;
export type HeatView = z.infer<typeof viewSchema>;
export type LiveHeat = z.infer<typeof heatSchema>;
export type HeatLaneView = z.infer<typeof laneSchema>;
