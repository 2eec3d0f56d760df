import fc from "fast-check";
import type { Candidate } from "../../../electron/domain/privacy/rule.ts";
import type { Mark } from "../../../electron/domain/protocols/protocol.ts";

const person = fc.record({
  ageBand: fc.constantFrom("20 to 24", "25 to 29"),
  category: fc.constantFrom("women", "unknown"),
  consent: fc.oneof(
    { weight: 8, arbitrary: fc.constant("given" as const) },
    { weight: 1, arbitrary: fc.constant("no-share" as const) },
    { weight: 1, arbitrary: fc.constant("no-guardian" as const) },
  ),
});

const mark: fc.Arbitrary<Mark> = fc.oneof(
  { weight: 8, arbitrary: fc.record({ state: fc.constant("complete" as const), value: fc.nat(60) }) },
  { weight: 1, arbitrary: fc.constant<Mark>({ state: "incomplete", missing: ["cw"] }) },
  { weight: 1, arbitrary: fc.constant<Mark>({ state: "unfinished", rounds: 1, reps: 2 }) },
);

const entry = fc.record({
  who: fc.nat(),
  what: fc.constantFrom(
    { test: "vertical", variant: "" } as const,
    { test: "push-up", variant: "full" } as const,
    { test: "push-up", variant: "knee" } as const,
  ),
  mark,
});

/** The marks of one invented day: up to forty people, each alike in all its rows; now and then a mark twice. */
export const halls: fc.Arbitrary<Candidate[]> = fc
  .tuple(
    fc.array(person, { minLength: 1, maxLength: 40, size: "max" }),
    fc.array(entry, { maxLength: 120, size: "max" }),
  )
  .map(([people, entries]) =>
    entries.flatMap((each) => {
      const athlete = each.who % people.length;
      const found = people[athlete];
      return found === undefined
        ? []
        : [{ athlete, ...found, ...each.what, quarter: "2026-Q4", mark: each.mark } satisfies Candidate];
    }),
  );
