import fc from "fast-check";
import { expect, test } from "vitest";
import { type PartHeights, pack, type Room } from "../../../renderer/screens/summary/paper/pack.ts";

const room: Room = { first: 80, other: 100, gap: 5 };

function part(lines: readonly number[], after = 0): PartHeights {
  return { heading: 10, head: 5, lines, after };
}

test("lines go on where a page ends, under the heading again", () => {
  // First page: 10 + 5 + 3 · 20 = 75 of 80; then 10 + 5 + 4 · 20 = 95 of 100.
  expect(pack([part([20, 20, 20, 20, 20, 20, 20])], room)).toEqual([
    [{ part: 0, from: 0, to: 3, after: false }],
    [{ part: 0, from: 3, to: 7, after: true }],
  ]);
});

test("a heading never stands without a line, and what comes after a table may begin a page", () => {
  // 10 + 5 + 50 = 65 of 80, and 5 + 10 + 5 + 20 would be 40 more.
  expect(pack([part([50]), part([20])], room)).toEqual([
    [{ part: 0, from: 0, to: 1, after: true }],
    [{ part: 1, from: 0, to: 1, after: true }],
  ]);
  expect(pack([part([60], 30)], room)).toEqual([
    [{ part: 0, from: 0, to: 1, after: false }],
    [{ part: 0, from: 1, to: 1, after: true }],
  ]);
});

test("a part without lines is only its heading, and a line higher than a page goes alone", () => {
  expect(pack([part([]), part([300, 20])], room)).toEqual([
    [{ part: 0, from: 0, to: 0, after: true }],
    [{ part: 1, from: 0, to: 1, after: false }],
    [{ part: 1, from: 1, to: 2, after: true }],
  ]);
});

test("a line higher than a page leaves no empty page behind it", () => {
  expect(pack([part([300])], room)).toEqual([[{ part: 0, from: 0, to: 1, after: true }]]);
});

const heights = fc.record({
  heading: fc.integer({ min: 5, max: 20 }),
  head: fc.integer({ min: 0, max: 10 }),
  lines: fc.array(fc.integer({ min: 3, max: 30 }), { maxLength: 60 }),
  after: fc.integer({ min: 0, max: 20 }),
});

test("every line stands once and in order, every note once, and no page is too full", () => {
  fc.assert(
    fc.property(fc.array(heights, { minLength: 1, maxLength: 8 }), (parts) => {
      const pages = pack(parts, room);
      for (const [index, { lines }] of parts.entries()) {
        const own = pages.flat().filter((piece) => piece.part === index);
        expect(own.flatMap(({ from, to }) => lines.slice(from, to))).toEqual(lines);
        expect(own.filter((piece) => piece.after)).toHaveLength(1);
      }
      for (const [number, pieces] of pages.entries()) {
        const used = pieces.map(({ part: of, from, to, after }) => {
          const { heading, head, lines, after: note } = parts[of] ?? part([]);
          const table = to > from ? head : 0;
          return heading + table + lines.slice(from, to).reduce((a, b) => a + b, 0) + (after ? note : 0);
        });
        const total = used.reduce((a, b) => a + b, 0) + room.gap * (pieces.length - 1);
        expect(total).toBeLessThanOrEqual(number === 0 ? room.first : room.other);
      }
    }),
  );
});
