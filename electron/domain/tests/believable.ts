import type { Sentence } from "../words.ts";
import type { Plausibility } from "./protocol.ts";

/** An inclusive limit, and the sentence about a value beyond it. */
type Limit = readonly [limit: number, sentence: Sentence];

/** The limits of one kind of value. `refuseBelow` is left out where no value can be below it. */
export interface Believable {
  readonly refuseBelow?: Limit;
  readonly askBelow: Limit;
  readonly askAbove: Limit;
  readonly refuseAbove: Limit;
}

/** A value that needs no question. */
export const fine: Plausibility = Object.freeze({ level: "fine" });

/** Accepts the value, but only after somebody has answered the question. */
export function ask(sentence: Sentence): Plausibility {
  return { level: "ask", sentence };
}

/** Never accepts the value; the sentence says what to check. */
export function refuse(sentence: Sentence): Plausibility {
  return { level: "refuse", sentence };
}

/** Judges a value, refusing before asking: the outer limits enclose the inner ones. Limits themselves are fine. */
export function believe(value: number, limits: Believable): Plausibility {
  const { refuseBelow, askBelow, askAbove, refuseAbove } = limits;
  if (refuseBelow !== undefined && value < refuseBelow[0]) return refuse(refuseBelow[1]);
  if (value > refuseAbove[0]) return refuse(refuseAbove[1]);
  if (value < askBelow[0]) return ask(askBelow[1]);
  if (value > askAbove[0]) return ask(askAbove[1]);
  return fine;
}

/** Returns the worse of two judgements of one attempt; of equals, the first. */
export function worse(first: Plausibility, second: Plausibility): Plausibility {
  const order = { fine: 0, ask: 1, refuse: 2 };
  return order[second.level] > order[first.level] ? second : first;
}
