import fc from "fast-check";

/** A group of marks, told in steps, and a mark with what may be added to it. */
export const groupsOfMarks = fc.record({
  better: fc.constantFrom("higher", "lower"),
  marks: fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 20, maxLength: 200 }),
  step: fc.constantFrom(1, 5, 30),
  value: fc.integer({ min: 0, max: 320 }),
  reach: fc.constantFrom(0, 4.5, 40),
  equalWithin: fc.constantFrom(0, 2),
});
