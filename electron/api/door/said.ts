import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";

/** Initials: one to four letters, in capitals. Anything else is refused with a sentence that says so. */
export const initialsSchema = z.string().max(40).transform(asInitials);

/** The reason for a skip or an undo; an empty one is refused. */
export const reasonSchema = z.string().max(500).transform(asReason);

function asInitials(typed: string): string {
  const initials = typed.trim().toUpperCase();
  if (!/^\p{L}{1,4}$/u.test(initials)) throw new Refusal("bad-input", sentence("station.initials"));
  return initials;
}

function asReason(typed: string): string {
  const reason = typed.trim();
  if (reason === "") throw new Refusal("bad-input", sentence("station.reason"));
  return reason;
}
