import { type Sentence, sentence } from "../words.ts";
import { protocolOf, type TestCode } from "./registry.ts";

/** The attempts of one athlete, test and variant that stand in one slot. */
export interface Slot {
  readonly count: number;
  /** Who keyed the first of them. */
  readonly by: string;
}

/** Why a slot takes no further attempt: the one that stands is to be corrected instead. Null while there is room. */
export function slotTaken(test: TestCode, parameters: unknown, slot: Slot | undefined): Sentence | null {
  if (slot === undefined || slot.count < protocolOf(test).slotSize(parameters)) return null;
  return sentence(`test.${test}.taken`, { by: slot.by });
}
