import { type Sentence, sentence } from "../words.ts";
import { isEasy } from "./easy.ts";

/**
 * The length of a PIN, in digits: fewer than six fall to an afternoon's guessing, more than twelve get written down.
 */
const fewestDigits = 6;
const mostDigits = 12;

/** Returns the fault of a new PIN as a sentence that says what to do; null when it is good. */
export function pinTrouble(pin: string): Sentence | null {
  if (!/^[0-9]*$/.test(pin)) return sentence("lock.pin.digits");
  if (pin.length < fewestDigits) return sentence("lock.pin.short", { fewest: fewestDigits });
  if (pin.length > mostDigits) return sentence("lock.pin.long", { most: mostDigits });
  return isEasy(pin) ? sentence("lock.pin.easy") : null;
}
