import type { Choosing, Field } from "../tests/fields.ts";
import { definitionOf, type TestCode } from "../tests/registry.ts";

/** Boxes to fill in on paper that stand together. */
interface BoxGroup {
  /** The option of the test's choice that these boxes are for; null: whichever was chosen. */
  readonly option: string | null;
  /** In the order in which they are entered later. */
  readonly fields: readonly Field[];
}

/** What a record sheet has for one athlete. */
export interface Boxes {
  /** A choice to tick before the boxes; null where each option has boxes of its own, or there is none. */
  readonly tick: Choosing | null;
  readonly groups: readonly BoxGroup[];
}

/**
 * Returns the boxes of one athlete's line on a record sheet, in the order and number in which they are entered. Fields
 * that Enter passes over (body weight) are left out: a sheet lies about in the hall.
 * @param parameters the test's, of the day
 */
export function boxesOf(test: TestCode, parameters: unknown): Boxes {
  const { keyed, protocol } = definitionOf(test);
  const { choice } = keyed;
  const fieldsOf = (typed: Readonly<Record<string, string>>) =>
    keyed.fields(typed, protocol.slotSize(parameters)).filter(({ aside }) => aside !== true);
  if (choice === null) return { tick: null, groups: [{ option: null, fields: fieldsOf({}) }] };
  const groups = choice.options.map((option) => ({ option, fields: fieldsOf({ [choice.name]: option }) }));
  const [first, second] = groups.map(({ fields }) => fields.map(({ name }) => name).join(" "));
  // Both options of an attempt of its own each (a direction), or with other fields: boxes for both.
  if (keyed.slot !== undefined || first !== second) return { tick: null, groups };
  return { tick: choice, groups: [{ option: null, fields: fieldsOf({}) }] };
}
