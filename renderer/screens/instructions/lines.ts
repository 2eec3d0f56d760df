import type { TFunction } from "i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { protocols } from "../../../electron/domain/tests/registry.ts";
import { numbersOf } from "../../words/ruleNumbers.ts";

type Translate = TFunction<["instructions", "station", "common"]>;

/** What stands under the headings of a station's sheet, a sentence a line. */
export interface StationLines {
  readonly setUp: readonly string[];
  readonly run: readonly string[];
  readonly form: readonly string[];
  readonly stop: string;
  readonly mark: string;
}

/**
 * The sentences of a station's sheet with the numbers of the day. What the rules beside the entry say as well is the
 * same sentence (`station.json`).
 */
export function linesOf(t: Translate, test: TestCode, parameters: unknown): StationLines {
  const numbers = numbersOf(test, parameters);
  const rule = (part: "setUp" | "run" | "counts" | "stop" | "score") =>
    t(`station:rules.${test}.${part}`, numbers);
  const { setUp, run, form } = ownLines(t, test, parameters);
  return {
    setUp: [rule("setUp"), ...setUp],
    run: test === "push-up" ? [...run.slice(0, 1), rule("run"), ...run.slice(1)] : run,
    form: [rule("counts"), ...form],
    stop: rule("stop"),
    mark: rule("score"),
  };
}

type OwnLines = Pick<StationLines, "setUp" | "run" | "form">;

/** The sentences that only the paper says, each key by its name so that a missing one does not compile. */
function ownLines(t: Translate, test: TestCode, parameters: unknown): OwnLines {
  const numbers = numbersOf(test, parameters);
  switch (test) {
    case "push-up":
      return {
        setUp: [t("push-up.setUp.beat", numbers), t("push-up.setUp.variant")],
        run: [t("push-up.run.start"), t("push-up.run.judge"), t("push-up.run.count"), t("push-up.run.note")],
        form: [t("push-up.form.short")],
      };
    case "agility":
      return {
        setUp: [t("agility.setUp.clock", numbers), t("agility.setUp.see")],
        run: [
          t("agility.run.practice"),
          t("agility.run.start"),
          t("agility.run.jump", numbers),
          t("agility.run.cw"),
          t("agility.run.ccw"),
          t("agility.run.note"),
        ],
        form: [t("agility.form.feet")],
      };
    case "vertical": {
      const count = protocols.vertical.parameters.parse(parameters).trials;
      return {
        setUp: [t("vertical.setUp.tape"), t("vertical.setUp.floor")],
        run: [
          t("vertical.run.reach"),
          t("vertical.run.jump"),
          t("vertical.run.trials", { count }),
          t("vertical.run.note"),
        ],
        form: [t("vertical.form.zero")],
      };
    }
    case "core":
      return {
        setUp: [t("core.setUp.see"), t("core.setUp.clock")],
        run: [
          t("core.run.start"),
          t("core.run.call"),
          t("core.run.round", numbers),
          t("core.run.end"),
          t("core.run.note"),
        ],
        form: [t("core.form.keep")],
      };
    case "endurance": {
      const count = protocols.endurance.parameters.parse(parameters).rounds;
      return {
        setUp: [t("endurance.setUp.order"), t("endurance.setUp.tick")],
        run: [
          t("endurance.run.start"),
          t("endurance.run.rounds", { count }),
          t("endurance.run.total"),
          t("endurance.run.tick"),
          t("endurance.run.last"),
          t("endurance.run.note"),
        ],
        form: [t("endurance.form.sides")],
      };
    }
  }
}
