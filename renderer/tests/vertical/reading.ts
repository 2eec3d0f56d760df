import type { Length } from "../../../electron/domain/length.ts";
import { judge } from "../../../electron/domain/tests/judge.ts";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { reachQuestion, type VerticalParameters } from "../../../electron/domain/tests/vertical/protocol.ts";
import { parseLength } from "../../../electron/domain/units.ts";
import type { Sentence } from "../../../electron/domain/words.ts";

/** The result of reading a typed length, before anything is entered. */
export type ReadLength =
  | { readonly state: "refused"; readonly sentence: Sentence }
  | { readonly state: "asked"; readonly length: Length; readonly questions: readonly Sentence[] }
  | { readonly state: "fine"; readonly length: Length };

/** The facts about the jumping athlete. */
export interface Jumper {
  readonly standingReach: Length | null;
  readonly bodyMass: number | null;
}

/** Reads a standing reach, by which the trials are judged later: one in the wrong unit raises a question at once. */
export function readReach(text: string, unit: LengthUnit): ReadLength {
  const read = parseLength(spelled(text, unit), unit);
  if ("sentence" in read) return { state: "refused", sentence: read.sentence };
  const { length } = read;
  const question = reachQuestion(length);
  return question === null ? { state: "fine", length } : { state: "asked", length, questions: [question] };
}

const onTheFloor: Length = { unit: "cm", halves: 0 };

/** Reads a touch and judges its jump. */
export function readTouch(
  text: string,
  unit: LengthUnit,
  parameters: VerticalParameters,
  { standingReach, bodyMass }: Jumper,
): ReadLength {
  const read = parseLength(spelled(text, unit), unit);
  if ("sentence" in read) return { state: "refused", sentence: read.sentence };
  const { length } = read;
  const mass = bodyMass === null ? {} : { bodyMass };
  const seen = { standingReach: standingReach ?? onTheFloor, touchReach: length, ...mass };
  const { refusal, questions } = judge("vertical", parameters, [seen]);
  if (refusal !== null) return { state: "refused", sentence: refusal };
  // The reach was questioned when it was measured.
  const asked = reachQuestion(seen.standingReach)?.key;
  const open = questions.filter(({ key }) => key !== asked);
  return open.length > 0 ? { state: "asked", length, questions: open } : { state: "fine", length };
}

/**
 * True if a text in centimetres may be complete: no wall reads more than three digits, and no tape finer than a half.
 * Inches are written in too many ways to tell.
 */
export function isWhole(text: string, unit: LengthUnit): boolean {
  return unit === "cm" && /^\d{3}(?:[.,][05]?)?$/.test(text.trim());
}

/** Longer than any text of a length. */
const longestText = 14;

/**
 * Adds a typed sign to a text; null where no reading goes on like that: after three digits of a centimetre comes its
 * mark or nothing, and no inches have more than three digits.
 */
export function withSign(text: string, sign: string, unit: LengthUnit): string | null {
  const added = text + sign;
  if (added.length > longestText || /\d{4}/.test(added)) return null;
  return unit === "cm" && isWhole(text, unit) && /\d/.test(sign) && !isWhole(added, unit) ? null : added;
}

/** After the decimal mark of a centimetre only a half is worth a key: `264.` is 264.5. */
function spelled(text: string, unit: LengthUnit): string {
  return unit === "cm" && /^\d{1,3}[.,]$/.test(text.trim()) ? `${text.trim()}5` : text;
}
