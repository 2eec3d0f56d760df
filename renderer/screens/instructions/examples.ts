import type { TFunction } from "i18next";
import type { Mark } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { protocols } from "../../../electron/domain/tests/registry.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { say } from "../../words/say.ts";

type Translate = TFunction<["instructions", "station", "common"]>;

/**
 * One worked example of a test's score rule, a sentence a line. What was seen is invented; what it amounts to is the
 * protocol's own answer with the parameters of the day, so that the paper never says another mark than the desk.
 */
export function exampleOf(t: Translate, test: TestCode, parameters: unknown): readonly string[] {
  switch (test) {
    case "push-up":
      return [pushUpExample(t, parameters)];
    case "agility":
      return agilityExample(t, parameters);
    case "vertical":
      return [verticalExample(t, parameters)];
    case "core":
      return [coreExample(t, parameters)];
    case "endurance":
      return [enduranceExample(t, parameters)];
  }
}

/** The value of a mark that is complete: each example is one by the way it is made. */
function completeValue(mark: Mark): number {
  if (mark.state !== "complete") throw new Error("An example has to amount to a mark.");
  return mark.value;
}

function pushUpExample(t: Translate, parameters: unknown): string {
  const rules = protocols["push-up"].parameters.parse(parameters);
  const seen = { how: "tally", reps: 20 + rules.missesToStop, offAtEnd: rules.missesToStop } as const;
  const mark = completeValue(protocols["push-up"].score(rules, [seen]));
  return t("push-up.example", { done: seen.reps, off: seen.offAtEnd, mark });
}

function agilityExample(t: Translate, parameters: unknown): readonly string[] {
  const rules = protocols.agility.parameters.parse(parameters);
  const cw = { direction: "cw", laps: 7, extra: 3, touches: 2 } as const;
  const ccw = { direction: "ccw", laps: 7, extra: 1, touches: 0 } as const;
  const [first, second] = [cw, ccw].map((seen) => ({
    ...seen,
    penalty: rules.touchPenalty,
    trial: trialOf(parameters, seen),
  }));
  const mark = completeValue(protocols.agility.score(rules, [cw, ccw])) / protocols.agility.grain.perUnit;
  return [
    t("agility.example.cw", { ...first }),
    t("agility.example.ccw", { ...second }),
    t("agility.example.mark", { first: first?.trial, second: second?.trial, mark }),
  ];
}

/** One trial by itself: the mark that the same trial both ways would have. */
function trialOf(
  parameters: unknown,
  seen: { readonly laps: number; readonly extra: number; readonly touches: number },
): number {
  const rules = protocols.agility.parameters.parse(parameters);
  const bothWays = (["cw", "ccw"] as const).map((direction) => ({ ...seen, direction }));
  return completeValue(protocols.agility.score(rules, bothWays)) / protocols.agility.grain.perUnit;
}

function verticalExample(t: Translate, parameters: unknown): string {
  const rules = protocols.vertical.parameters.parse(parameters);
  const standingReach = 2190;
  const touches = [2590, 2625, 2610, 2600, 2620, 2580, 2615, 2605, 2595, 2585].slice(0, rules.trials);
  const value = completeValue(
    protocols.vertical.score(
      rules,
      touches.map((touchReach) => ({ standingReach, touchReach })),
    ),
  );
  return t("vertical.example", {
    reach: standingReach / 10,
    touches: touches.map((touch) => touch / 10).join(", "),
    best: Math.max(...touches) / 10,
    mark: value / 10,
  });
}

function coreExample(t: Translate, parameters: unknown): string {
  const rules = protocols.core.parameters.parse(parameters);
  const held = 209_600;
  const written = protocols.core.write(completeValue(protocols.core.score(rules, [{ held }])), "cm");
  const stage = written.note === undefined ? "" : say(written.note, t as unknown as TFunction<never>);
  return t("core.example", { shown: formatTime(held, true), mark: written.number, stage });
}

function enduranceExample(t: Translate, parameters: unknown): string {
  const rules = protocols.endurance.parameters.parse(parameters);
  const time = 252_340;
  const value = completeValue(protocols.endurance.score(rules, [{ finished: true, time }]));
  // The watch shows hundredths, which are never written.
  const shown = `${formatTime(time, false)}.${String((time % 1000) / 10).padStart(2, "0")}`;
  return t("endurance.example", { shown, mark: protocols.endurance.write(value, "cm").number });
}
