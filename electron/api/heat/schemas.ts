import { z } from "zod";
import { mostLanes } from "../../domain/heats/heat.ts";
import { sentenceSchema, stationPersonSchema, testSchema, toldSchema } from "../door/shapes.ts";

/** The shapes in which live heats are asked and told. Instants are ISO 8601; ms count from the heat's time 0. */
export const heatIdSchema = z.uuid();
export const laneNumberSchema = z.int().min(1).max(mostLanes);

const atMsSchema = z.number().min(-86_400_000).max(864_000_000);

/** A tap as it is sent; `kind` and `detail` are what the test's own taps are. */
export const tapSchema = z.object({
  id: z.uuid(),
  lane: laneNumberSchema.nullable(),
  kind: z.string().max(20),
  /** By the clock of whoever tapped, anchored to the heat's `elapsedMs`; kept in whole ms. */
  atMs: atMsSchema,
  detail: z.unknown().default({}),
});

/** taken: changed something; idle: kept, and changed nothing; known: a retry, kept before. */
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
  /** Today's standing attempts of the test that this heat did not make: fold them in as they are. */
  prior: z.array(z.unknown()),
  /** The athlete may still be changed. */
  free: z.boolean(),
  calledAt: z.string().nullable(),
  /** When the rest before this test is over; null once they have nothing more to do here. */
  readyAt: z.string().nullable(),
  /** What stands of today, this heat's own attempts among it; null when nothing stands. */
  told: toldSchema.nullable(),
  /** The attempts that this heat entered, by the key of the lane's result; none where it could not be entered. */
  entered: z.array(
    z.object({ key: z.string(), attemptId: z.string(), void: z.boolean(), corrected: z.boolean() }),
  ),
  /** Entered, and worth a second look. */
  doubts: z.array(sentenceSchema),
  /** Why a result was not entered, and what to do about it; null when all were. */
  trouble: sentenceSchema.nullable(),
});

const heatSchema = z.object({
  heatId: z.string(),
  test: testSchema,
  state: z.enum(["gathering", "running"]),
  /** Lanes of the station; those not named in `lane` are free. */
  lanes: z.int(),
  /** The frozen parameters; parse with the test's own schema. */
  parameters: z.unknown(),
  /** Time since time 0 when this answer was made, below 0 during the count-in; null before the start. */
  elapsedMs: z.number().nullable(),
  /** wall: the machine started anew since the start, and the time is only as right as its clock was set. */
  clock: z.enum(["monotonic", "wall"]),
  lane: z.array(laneSchema),
  /** All taps in the order in which they came in: fold them to see where each lane stands. */
  events: z.array(eventSchema),
  /** Somebody was in a lane, and everybody is done or set aside: the heat can end. */
  allDone: z.boolean(),
});

export const viewSchema = z.object({
  /** The day is open. */
  open: z.boolean(),
  heat: heatSchema.nullable(),
  /** Who comes next, those in lanes left out. */
  next: z.array(
    z.object({
      who: stationPersonSchema,
      waitingSince: z.string(),
      readyAt: z.string(),
      calledAt: z.string().nullable(),
      /** How often they were called here and did not come. */
      absences: z.int(),
    }),
  ),
  /** The heats of this test that ended last, newest first. */
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

export type HeatView = z.infer<typeof viewSchema>;
export type LiveHeat = z.infer<typeof heatSchema>;
export type HeatLaneView = z.infer<typeof laneSchema>;
