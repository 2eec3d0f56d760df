import { describe, expect, test } from "vitest";
import {
  type Answers,
  bringsBack,
  deciderOf,
  decisionOf,
  type Known,
  missing,
  noToAll,
  outcomeOf,
  questions,
  unanswered,
} from "../../../electron/domain/people/questions.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";

const adult: Known = {
  birthYear: 1990,
  mayBeUnder18: false,
  guardianConsent: false,
  board: "bib",
  share: false,
  asked: false,
  leftOut: [],
};
const asked = ["heart", "head", "clinician", "body", "medicine", "hard", "cold"];
const minor: Known = { ...adult, birthYear: 2010, mayBeUnder18: true };
const unknown: Known = { ...adult, birthYear: null };

function answered(known: Known, differing: Partial<Answers> = {}): Answers {
  return { ...unanswered(known), said: noToAll, board: "name", share: true, ...differing };
}

describe("what is asked", () => {
  test("somebody new: every question, the board and sharing", () => {
    expect(missing(unanswered(adult), adult)).toEqual([...asked, "board", "share"]);
  });

  test("somebody who answered on another day confirms board and sharing, and is asked the rest", () => {
    const back = { ...adult, asked: true, board: "name", share: true } as const;
    expect(missing(unanswered(back), back)).toEqual(asked);
    expect(unanswered(back)).toMatchObject({ board: "name", share: true });
  });

  test("without a year of birth: whether under 18, then the year and the guardian", () => {
    expect(missing(answered(unknown), unknown)).toEqual(["under18"]);
    expect(missing(answered(unknown, { under18: false }), unknown)).toEqual([]);
    expect(missing(answered(unknown, { under18: true }), unknown)).toEqual(["birthYear", "guardian"]);
    const said = answered(unknown, { under18: true, birthYear: "2011", guardian: true });
    expect(missing(said, unknown)).toEqual([]);
    expect(outcomeOf(said, unknown)).toMatchObject({ birthYear: 2011, guardianConsent: true });
  });

  test("a minor whose guardian's consent was not seen does not test, but may be here", () => {
    expect(missing(answered(minor, { guardian: false }), minor)).toEqual(["guardian"]);
    expect(missing(answered(minor, { guardian: false, decision: "none" }), minor)).toEqual([]);
  });

  test.each(["", "0", "12345", "-1", "1.5", "abc"])("%j is no bib", (bib) => {
    expect(missing(answered(adult, { bib }), adult)).toEqual(["bib"]);
  });
});

describe("a change of somebody checked in", () => {
  const skips: Known = { ...adult, asked: true, leftOut: ["core", "agility"] };
  test.each([
    ["as it was", {}, false],
    ["one more is skipped", { leaveOut: new Set(["core", "agility", "vertical"] as const) }, false],
    ["all are skipped", { decision: "none" }, false],
    ["one comes back", { leaveOut: new Set(["core"] as const) }, true],
    ["all come back", { decision: "all" }, true],
  ] as const)("%s: brings a test back: %j is %s", (_what, change, back) => {
    expect(bringsBack({ ...unanswered(skips), said: noToAll, ...change }, skips)).toBe(back);
  });
});

describe("a yes", () => {
  test.each([
    ["heart", "doctor"],
    ["head", "doctor"],
    ["clinician", "doctor"],
    ["body", "medicalLead"],
    ["medicine", "medicalLead"],
    ["hard", "organiser"],
  ] as const)("%s: has to be decided by the %s, and blocks nothing by itself", (said, decider) => {
    const answers = answered(adult, { said: { ...noToAll, [said]: true } });
    expect([deciderOf(answers), decisionOf(answers)]).toEqual([decider, null]);
    expect(missing(answers, adult)).toEqual(["decision"]);
    expect(missing({ ...answers, decision: "all" }, adult)).toEqual([]);
    expect(missing({ ...answers, decision: "some" }, adult)).toEqual(["leaveOut"]);
    expect(outcomeOf({ ...answers, decision: "none" }, adult).leaveOut).toEqual([...testCodes]);
  });

  test("of several the strictest decides: no medical lead lets a heart through that a doctor has not", () => {
    const said = { ...noToAll, hard: true, body: true };
    expect(deciderOf(answered(adult, { said }))).toBe("medicalLead");
    expect(deciderOf(answered(adult, { said: { ...said, heart: true } }))).toBe("doctor");
    expect(deciderOf(answered(adult))).toBeNull();
  });

  test("still cold: nothing to decide", () => {
    expect(missing(answered(adult, { said: { ...noToAll, cold: true } }), adult)).toEqual([]);
  });

  test("what leaves the window is the same whichever question it was", () => {
    const outcomes = questions.map((said) =>
      outcomeOf(
        answered(adult, {
          said: { ...noToAll, [said]: true },
          decision: "some",
          leaveOut: new Set(["core"]),
        }),
        adult,
      ),
    );
    expect(new Set(outcomes.map((outcome) => JSON.stringify(outcome))).size).toBe(1);
    expect(outcomes[0]).toEqual({
      bib: null,
      leaveOut: ["core"],
      board: "name",
      share: true,
      guardianConsent: false,
      birthYear: null,
    });
  });
});
