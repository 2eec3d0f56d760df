import fc, { type Arbitrary } from "fast-check";
import { commonWhat } from "../../../electron/domain/heats/heat.ts";
import { definitionOf, protocolOf } from "../../../electron/domain/tests/registry.ts";
import { examplesOf } from "../../unit/tests/every-test.ts";
import type { Hints } from "./hints.ts";
import { oddities } from "./oddities.ts";
import { type Schema, valuesOf } from "./schema.ts";

/** What zod calls unknown, and the domain parses by the test's own schemas: what those take, and anything else. */
export function unknownOf(hints: Hints, key: string): Arbitrary<unknown> {
  const { attempt, parameters } = protocolOf(hints.test);
  const odd = fc.oneof(fc.constantFrom(...oddities), fc.jsonValue());
  const parsed = valuesOf(asSchema(key === "seen" ? attempt : parameters), hints);
  if (key !== "seen") return fc.oneof({ weight: 4, arbitrary: parsed }, odd);
  return fc.oneof(
    { weight: 12, arbitrary: examplesOf[hints.test].usual },
    { weight: 3, arbitrary: parsed },
    odd,
  );
}

/** A tap's kind and detail: the test's own, such as every test knows, and anything else. */
export function tapsOf(hints: Hints): Arbitrary<object> {
  const own = valuesOf(asSchema(definitionOf(hints.test).live.what), hints) as Arbitrary<object>;
  const common = valuesOf(asSchema(commonWhat), hints) as Arbitrary<object>;
  const odd = fc.record({ kind: fc.constantFrom("stop", "", "constructor"), detail: fc.jsonValue() });
  return fc.oneof({ weight: 12, arbitrary: own }, { weight: 2, arbitrary: common }, odd);
}

function asSchema(schema: unknown): Schema {
  return schema as Schema;
}
