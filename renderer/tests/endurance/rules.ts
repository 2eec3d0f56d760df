import { type EnduranceParameters, endurance } from "../../../electron/domain/tests/endurance/protocol.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { completeValue } from "../example.ts";
import type { Setting, SheetLines, Texts } from "../face.ts";

type Translate = Texts<"endurance">;

export function settings({ rounds, exercises }: EnduranceParameters): readonly Setting[] {
  return [["rounds", rounds], ...exercises.map(({ exercise, count }): Setting => [exercise, count])];
}

export function withSettings({ rounds, exercises }: EnduranceParameters, some: readonly Setting[]): unknown {
  const values = new Map(some);
  return {
    rounds: values.get("rounds") ?? rounds,
    exercises: exercises.map((each) => ({ ...each, count: values.get(each.exercise) ?? each.count })),
  };
}

export function summary(t: Translate, { rounds, exercises }: EnduranceParameters): string {
  const parts = exercises.map(({ exercise, count }) => t(`part.${exercise}`, { count }));
  return t("summary", { count: rounds, parts: parts.join(", ") });
}

export function asks(t: Translate, { rounds, exercises }: EnduranceParameters): string {
  const parts = exercises.map(({ exercise, count }) => t(`counted.${exercise}`, { count }));
  return t("asks", { count: rounds, parts: parts.join(", ") });
}

export function lines(t: Translate, { rounds }: EnduranceParameters): SheetLines {
  return {
    setUp: [t("sheet.setUp.order"), t("sheet.setUp.tick")],
    run: [
      t("sheet.run.start"),
      t("sheet.run.rounds", { count: rounds }),
      t("sheet.run.total"),
      t("sheet.run.tick"),
      t("sheet.run.last"),
      t("sheet.run.note"),
    ],
    form: [t("sheet.form.sides")],
  };
}

export function example(t: Translate, parameters: EnduranceParameters): readonly string[] {
  const time = 252_340;
  const value = completeValue(endurance.score(parameters, [{ finished: true, time }]));
  // The watch shows hundredths, which are never written down.
  const shown = `${formatTime(time, false)}.${String((time % 1000) / 10).padStart(2, "0")}`;
  return [t("sheet.example", { shown, mark: endurance.write(value, "cm").number })];
}
