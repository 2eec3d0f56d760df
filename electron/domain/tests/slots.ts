import { type Sentence, sentence } from "../words.ts";
import { protocolOf, type TestCode } from "./registry.ts";

/** The standing attempts of one athlete, test and variant in one slot. */
export interface Slot {
  readonly count: number;
  /** Initials with the first of them. */
  readonly by: string;
}

/**
 * Returns why a slot takes no further attempt: the standing one has to be corrected instead. Null while there is room.
 */
export function slotTaken(test: TestCode, parameters: unknown, slot: Slot | undefined): Sentence | null {
  if (slot === undefined || slot.count < protocolOf(test).slotSize(parameters)) return null;
  return sentence(`test.${test}.taken`, { by: slot.by });
}
