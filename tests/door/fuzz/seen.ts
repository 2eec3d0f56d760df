import fc, { type Arbitrary } from "fast-check";
import { commonWhat } from "../../../electron/domain/heats/heat.ts";
import { liveAgility } from "../../../electron/domain/tests/agility/live.ts";
import { liveCore } from "../../../electron/domain/tests/core/live.ts";
import { liveEndurance } from "../../../electron/domain/tests/endurance/live.ts";
import { livePushUp } from "../../../electron/domain/tests/push-up/live.ts";
import { protocolOf } from "../../../electron/domain/tests/registry.ts";
import { liveVertical } from "../../../electron/domain/tests/vertical/live.ts";
import type { Hints } from "./hints.ts";
import { oddities } from "./oddities.ts";
import { type Schema, valuesOf } from "./schema.ts";

type ByTest<Value> = Readonly<Record<Hints["test"], Value>>;

/** What is mostly seen in a hall, so that much of it is taken and the day moves on. */
const usual: ByTest<Arbitrary<unknown>> = {
  "push-up": fc.record({ how: fc.constant("tally"), reps: fc.nat(60), offAtEnd: fc.nat(3) }),
  agility: fc.record({
    direction: fc.constantFrom("cw", "ccw"),
    laps: fc.nat(12),
    extra: fc.nat(3),
    touches: fc.nat(5),
  }),
  vertical: fc.record({
    standingReach: fc.integer({ min: 1900, max: 2400 }),
    touchReach: fc.integer({ min: 2100, max: 3000 }),
  }),
  core: fc.record({ held: fc.nat(260).map((seconds) => seconds * 1000) }),
  endurance: fc.record({ finished: fc.constant(true), time: fc.integer({ min: 200_000, max: 700_000 }) }),
};

const taps: ByTest<unknown> = {
  "push-up": livePushUp.what,
  agility: liveAgility.what,
  vertical: liveVertical.what,
  core: liveCore.what,
  endurance: liveEndurance.what,
};

/** What zod calls unknown, and the domain parses by the test's own schemas: what those take, and anything else. */
export function unknownOf(hints: Hints, key: string): Arbitrary<unknown> {
  const { attempt, parameters } = protocolOf(hints.test);
  const odd = fc.oneof(fc.constantFrom(...oddities), fc.jsonValue());
  const parsed = valuesOf(asSchema(key === "seen" ? attempt : parameters), hints);
  if (key !== "seen") return fc.oneof({ weight: 4, arbitrary: parsed }, odd);
  return fc.oneof({ weight: 12, arbitrary: usual[hints.test] }, { weight: 3, arbitrary: parsed }, odd);
}

/** A tap's kind and detail: the test's own, such as every test knows, and anything else. */
export function tapsOf(hints: Hints): Arbitrary<object> {
  const own = valuesOf(asSchema(taps[hints.test]), hints) as Arbitrary<object>;
  const common = valuesOf(asSchema(commonWhat), hints) as Arbitrary<object>;
  const odd = fc.record({ kind: fc.constantFrom("stop", "", "constructor"), detail: fc.jsonValue() });
  return fc.oneof({ weight: 12, arbitrary: own }, { weight: 2, arbitrary: common }, odd);
}

function asSchema(schema: unknown): Schema {
  return schema as Schema;
}
