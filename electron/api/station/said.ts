import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";

/**
 * Who keys: one to four letters, in capitals.
 * @throws Refusal `bad-input`
 */
export function saidBy(typed: string): string {
  const initials = typed.trim().toUpperCase();
  if (!/^\p{L}{1,4}$/u.test(initials)) throw new Refusal("bad-input", sentence("station.initials"));
  return initials;
}

/**
 * Why something is undone or left out.
 * @throws Refusal `bad-input` when nothing was said.
 */
export function saidWhy(typed: string): string {
  const reason = typed.trim();
  if (reason === "") throw new Refusal("bad-input", sentence("station.reason"));
  return reason;
}
