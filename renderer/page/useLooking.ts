import { useState } from "react";
import { startOf } from "../../electron/domain/keyed/keyed.ts";
import {
  type FieldGroup,
  fieldGroupsOf,
  type LookedUp,
  lookUp,
  readEarlier,
} from "../../electron/domain/reference-table/look-up.ts";
import type { PageData } from "../../electron/domain/reference-table/page-data.ts";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../electron/domain/tests/reading.ts";
import { protocolOf, type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";

/** What is typed of one test. */
interface TypedTest {
  /** The choice before the fields: how it was done, or whether it was finished. */
  readonly chosen: Typed;
  readonly groups: Readonly<Record<string, Typed>>;
  readonly earlier: string;
}

/** One test as it is looked up. */
export interface LookedUpTest {
  readonly test: TestCode;
  readonly parameters: unknown;
  readonly variant: string;
  readonly fingerprint: string;
  readonly chosen: Typed;
  readonly typed: Readonly<Record<string, Typed>>;
  readonly groups: readonly FieldGroup[];
  readonly came: LookedUp;
  readonly earlierText: string;
  readonly earlier: ReturnType<typeof readEarlier>;
  readonly choose: (name: string, option: string) => void;
  readonly write: (group: string, field: string, text: string) => void;
  readonly writeEarlier: (text: string) => void;
}

/** Keeps what is typed, in the page alone, and reads it. */
export function useLooking(data: PageData, lengths: LengthUnit): readonly LookedUpTest[] {
  const [typed, setTyped] = useState<Partial<Record<TestCode, TypedTest>>>({});
  return testCodes.map((test): LookedUpTest => {
    const { parameters } = data.tests[test];
    const own = typed[test] ?? beginningOf(test, lengths);
    // From what stands there by then: two keys may come before the page is drawn again.
    const set = (change: (before: TypedTest) => Partial<TypedTest>) =>
      setTyped((all) => {
        const before = all[test] ?? own;
        return { ...all, [test]: { ...before, ...change(before) } };
      });
    const groups = fieldGroupsOf(test, parameters, own.chosen);
    const all = Object.fromEntries(
      groups.map(({ name }) => [name, { ...own.chosen, ...own.groups[name] }] as const),
    );
    const variant = own.chosen.variant ?? "";
    return {
      ...{ test, parameters, variant, chosen: own.chosen, typed: all, groups },
      fingerprint: fingerprint(test, variant, parameters),
      came: lookUp(test, parameters, groups, all, lengths),
      earlierText: own.earlier,
      earlier: readEarlier(test, parameters, own.earlier, lengths),
      choose: (name, option) => set(({ chosen }) => ({ chosen: { ...chosen, [name]: option } })),
      write: (group, field, text) =>
        set(({ groups: before }) => ({
          groups: { ...before, [group]: { ...before[group], [field]: text } },
        })),
      writeEarlier: (earlier) => set(() => ({ earlier })),
    };
  });
}

function beginningOf(test: TestCode, lengths: LengthUnit): TypedTest {
  const [variant = ""] = protocolOf(test).variants;
  return { chosen: startOf(test, { seen: [], variant }, lengths), groups: {}, earlier: "" };
}
