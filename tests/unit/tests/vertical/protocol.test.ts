import { expect, test } from "vitest";
import { type VerticalAttempt, vertical } from "../../../../electron/domain/tests/vertical/protocol.ts";
import { cm } from "../../../lengths.ts";
import { textOf } from "../../domain/text.ts";

function judge(attempt: VerticalAttempt): string {
  const opinion = vertical.plausibility(vertical.defaults, vertical.attempt.parse(attempt));
  return opinion.level === "fine" ? "fine" : `${opinion.level}: ${textOf(opinion.sentence)}`;
}

test("a reach keyed in the wrong unit is asked about though the height looks right", () => {
  expect(judge({ standingReach: cm(86.5), touchReach: cm(104) })).toBe(
    "ask: A standing reach of 86.5 cm (34.06 in) is unusual. Is the unit right?",
  );
});

test("the worst of several doubts is the one that is told", () => {
  expect(judge({ standingReach: cm(86.5), touchReach: cm(80) })).toBe(
    "refuse: A touch of 80 cm (31.5 in) is below the standing reach. Check both readings.",
  );
  expect(judge({ standingReach: cm(86.5), touchReach: cm(104), bodyMass: 700_000 / 2 })).toBe(
    "refuse: 350 kg can't be right for a body weight. Check the number and its unit.",
  );
});

test("a jump beyond belief says what to check", () => {
  expect(judge({ standingReach: cm(219), touchReach: cm(369) })).toBe(
    "refuse: 150 cm (59.06 in) is too high for a jump. Is this the reach and not the jump?",
  );
});

test("a body mass in range changes nothing", () => {
  expect(judge({ standingReach: cm(219), touchReach: cm(264), bodyMass: 68_000 })).toBe("fine");
});
