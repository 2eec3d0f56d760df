import { type Sentence, sentence } from "../words.ts";

/** How many digits a PIN has. Fewer than six fall to an afternoon of guessing, more than twelve are written down. */
export const fewestDigits = 6;
export const mostDigits = 12;

/** What is wrong with a PIN that somebody wants to set, as a sentence that says what to do; null when it is good. */
export function pinTrouble(pin: string): Sentence | null {
  if (!/^[0-9]*$/.test(pin)) return sentence("lock.pin.digits");
  if (pin.length < fewestDigits) return sentence("lock.pin.short", { fewest: fewestDigits });
  if (pin.length > mostDigits) return sentence("lock.pin.long", { most: mostDigits });
  return isEasy(pin) ? sentence("lock.pin.easy") : null;
}

/** What is tried first by whoever guesses: one or two digits over and over, or a run up or down. */
function isEasy(pin: string): boolean {
  if (new Set(pin).size <= 2) return true;
  const steps = new Set(
    [...pin].slice(1).map((digit, index) => (Number(digit) - Number(pin[index]) + 10) % 10),
  );
  return steps.size === 1;
}
