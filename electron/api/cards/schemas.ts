import { z } from "zod";
import { testSchema, toldSchema, writtenSchema } from "../door/shapes.ts";
import { placeSchema } from "../place/schemas.ts";

/** The shapes of the athletes' cards. A card holds its own athlete's data and nothing of anybody else's. */
export const whoInput = z.object({
  /** null: the day at hand once it is open, else the last one that was closed. */
  dayId: z.int().nullable().default(null),
});

export const whichCardsSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("all") }),
  z.object({ kind: z.literal("league"), leagueId: z.int() }),
  z.object({ kind: z.literal("athlete"), athleteId: z.int() }),
]);

const cardDaySchema = z.object({
  id: z.int(),
  date: z.string(),
  title: z.string(),
  state: z.enum(["planned", "open", "closed"]),
});

const personSchema = z.object({
  athleteId: z.int(),
  name: z.string(),
  number: z.string(),
  league: z.string(),
  bib: z.int().nullable(),
});

/** Who has a card, without what stands on it. */
export const peopleSchema = z.object({
  day: cardDaySchema.nullable(),
  /** By league and name, as cards are printed; everybody with at least one mark. */
  people: z.array(personSchema.extend({ leagueId: z.int() })),
  leagues: z.array(z.object({ id: z.int(), name: z.string(), count: z.int() })),
  /** How many are testing and have no mark yet, so that they have no card. */
  without: z.int(),
});

const pointSchema = z.object({
  date: z.string(),
  value: z.number(),
  written: writtenSchema,
  today: z.boolean(),
});

const cardTestSchema = z.object({
  test: testSchema,
  /** The way in which it was done; of a test not taken, the way of the newest mark before. */
  variant: z.string(),
  /** null: not taken on this day. */
  told: toldSchema.nullable(),
  /** The best up to and with this day; null where there is none. */
  best: writtenSchema.nullable(),
  /** What was also done on this day in another way, which never compares. */
  also: z.array(toldSchema),
  /** Marks of the same rules up to and with this day, oldest first. */
  points: z.array(pointSchema),
  /** What is no news after the last test before this day's, or after the newest where it was not taken; grains. */
  noise: z.object({ low: z.number(), high: z.number() }).nullable(),
  /** Whether the noise is nothing but an assumption yet. */
  assumed: z.boolean(),
  /** null: there are not enough others to compare with. */
  place: placeSchema.nullable(),
});

const focusSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("test"), test: testSchema, by: z.enum(["place", "change"]) }),
  z.object({ kind: z.literal("even"), why: z.enum(["few", "alike"]) }),
]);

const cardSchema = personSchema.extend({
  /** All five, in the order of the day. */
  tests: z.array(cardTestSchema),
  focus: focusSchema,
  tone: z.enum(["first", "gain", "dip", "mixed", "best", "steady"]),
});

export const cardsSchema = z.object({
  day: cardDaySchema,
  next: z.object({ from: z.string(), until: z.string() }),
  cards: z.array(cardSchema),
});

export type WhichCards = z.infer<typeof whichCardsSchema>;
export type Card = z.infer<typeof cardSchema>;
export type CardTest = z.infer<typeof cardTestSchema>;
export type CardPeople = z.infer<typeof peopleSchema>;
