import fc from "fast-check";
import { expect, test } from "vitest";
import { sortOut, tablesOf } from "../../../electron/domain/privacy/able.ts";
import { problemOf } from "../../../electron/domain/privacy/marks-rule.ts";
import type { Attribute } from "../../../electron/domain/privacy/problem.ts";
import { bestNode } from "../../../electron/domain/privacy/search.ts";
import { leastLoss } from "./exhaustive.ts";
import { halls } from "./hall.ts";

const problems = fc
  .record({ size: fc.integer({ min: 1, max: 24 }), k: fc.integer({ min: 2, max: 4 }) })
  .chain(({ size, k }) => {
    const column = (most: number) => fc.array(fc.nat(most), { minLength: size, maxLength: size });
    const losses = fc.oneof(
      column(1000),
      fc.nat(1000).map((loss) => Array.from({ length: size }, () => loss)),
    );
    const plain = fc.record({ codes: column(3), losses, tells: fc.boolean() });
    const ended = fc.record({
      ...{ codes: column(3), losses, tells: fc.constant(true) },
      ends: fc.tuple(fc.nat(3), fc.nat(3)),
    });
    const mark = fc.oneof(plain, ended);
    const quasi = fc.oneof(
      fc.record({ codes: column(2), losses, tells: fc.constant(true), mixed: column(2) }),
      fc.record({ codes: column(1), losses, tells: fc.constant(true) }),
      fc.record({
        codes: fc.constant(Array.from({ length: size }, () => 0)),
        losses,
        tells: fc.constant(false),
      }),
    );
    const weight = fc.integer({ min: 0, max: 250 });
    const attribute = fc.oneof(
      fc.record({
        kind: fc.constant("mark" as const),
        weight,
        choices: fc.array(mark, { minLength: 1, maxLength: 4 }),
      }),
      fc.record({
        kind: fc.constant("quasi" as const),
        weight,
        choices: fc.array(quasi, { minLength: 1, maxLength: 3 }),
      }),
    );
    return fc.record({
      size: fc.constant(size),
      attributes: fc.array<Attribute>(attribute, { minLength: 1, maxLength: 4 }),
      demands: fc.record({
        k: fc.constant(k),
        l: fc.integer({ min: 1, max: 3 }),
        limit: fc.nat(size),
        tests: fc.integer({ min: 0, max: 2 }),
      }),
    });
  });

test("the node chosen loses as little as any, found by trying all of any problem", () => {
  let found = 0;
  fc.assert(
    fc.property(problems, ({ size, attributes, demands }) => {
      const node = bestNode(size, attributes, demands);
      if (node !== null) found += 1;
      expect(node?.loss ?? null).toBe(leastLoss(size, attributes, demands));
      if (node === null) return;
      expect(node.suppressed.filter(Boolean).length).toBeLessThanOrEqual(demands.limit);
    }),
    { numRuns: 400 },
  );
  expect(found).toBeGreaterThan(50);
});

test("so it does with the marks of invented days", () => {
  let found = 0;
  fc.assert(
    fc.property(halls, fc.constantFrom(5, 11), (candidates, k) => {
      for (const { rows } of tablesOf(sortOut(candidates).able)) {
        const { attributes, codings } = problemOf(rows);
        if (codings.length === 0) continue;
        const demands = { k, l: 2, limit: Math.floor(rows.length / 20), tests: 1 };
        const node = bestNode(rows.length, attributes, demands);
        if (node !== null) found += 1;
        expect(node?.loss ?? null).toBe(leastLoss(rows.length, attributes, demands));
      }
    }),
    { numRuns: 3, seed: 8 },
  );
  expect(found).toBeGreaterThan(1);
});
