import { expect, test } from "vitest";
import { joinedFacts } from "../../../electron/domain/people/joined.ts";

type Person = Parameters<typeof joinedFacts>[0];
const never = { asked: false, board: "bib", share: false, guardianConsent: false } as const;
const open = { asked: true, board: "name", share: true, guardianConsent: true } as const;

// Our own rule: what somebody said themselves is not outweighed by a question that nobody asked.
test.each([
  ["an answer beside a record that was never asked", open, never, open],
  [
    "a careful answer beside a sheet's open one",
    { ...never, asked: true },
    { ...open, asked: false },
    { ...never, asked: true },
  ],
  [
    "an answer beside a record that a sheet hides",
    open,
    { ...never, board: "hidden" },
    { ...open, board: "hidden" },
  ],
  ["two answers", open, { ...open, board: "bib", share: false }, { ...open, board: "bib", share: false }],
  ["two records that were never asked", { ...open, asked: false }, never, never],
] as const)("%s: the consents of one record of both, whichever stays", (_what, first, second, joined) => {
  const who = { number: "7", birthYear: 1990, category: null };
  const [one, other]: [Person, Person] = [
    { ...who, ...first },
    { ...who, ...second },
  ];
  expect(joinedFacts(one, other)).toEqual({ ...who, ...joined });
  expect(joinedFacts(other, one)).toEqual({ ...who, ...joined });
});
