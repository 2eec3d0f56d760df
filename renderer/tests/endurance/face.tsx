import { useTranslation } from "react-i18next";
import { type EnduranceParameters, endurance } from "../../../electron/domain/tests/endurance/protocol.ts";
import { timeText } from "../../../electron/domain/tests/time-text.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { completeValue } from "../example.ts";
import type { Setting, SheetLines, TestFace, Texts } from "../face.ts";
import css from "../Steps.module.css";
import { Round } from "./Round.tsx";

/** The windows' part of the circuit. */
export const enduranceFace: TestFace<"endurance"> = {
  drawing: { layout: "large-strip", Drawing: Round },
  Steps,
  numbers: ({ rounds }) => ({ rounds }),
  settings,
  withSettings,
  summary,
  seen: (t, seen) =>
    seen.finished
      ? t("seen.finished", { time: timeText(seen.time) })
      : t("seen.stopped", { rounds: seen.roundsDone, reps: seen.repsDone }),
  asks,
  lines,
  example,
};

/** Lists the exercises of a round, one per line. */
function Steps({ parameters: { exercises } }: { readonly parameters: EnduranceParameters }) {
  const { t } = useTranslation("endurance");
  return (
    <ol className={css.steps}>
      {exercises.map(({ exercise, count }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an exercise may come twice in a round, and the order is frozen
        <li key={index}>{t(`counted.${exercise}`, { count })}</li>
      ))}
    </ol>
  );
}

type Translate = Texts<"endurance">;

function settings({ rounds, exercises }: EnduranceParameters): readonly Setting[] {
  return [["rounds", rounds], ...exercises.map(({ exercise, count }): Setting => [exercise, count])];
}

function withSettings({ rounds, exercises }: EnduranceParameters, some: readonly Setting[]): unknown {
  const values = new Map(some);
  return {
    rounds: values.get("rounds") ?? rounds,
    exercises: exercises.map((each) => ({ ...each, count: values.get(each.exercise) ?? each.count })),
  };
}

function summary(t: Translate, { rounds, exercises }: EnduranceParameters): string {
  const parts = exercises.map(({ exercise, count }) => t(`part.${exercise}`, { count }));
  return t("summary", { count: rounds, parts: parts.join(", ") });
}

function asks(t: Translate, { rounds, exercises }: EnduranceParameters): string {
  const parts = exercises.map(({ exercise, count }) => t(`counted.${exercise}`, { count }));
  return t("asks", { count: rounds, parts: parts.join(", ") });
}

function lines(t: Translate, { rounds }: EnduranceParameters): SheetLines {
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

function example(t: Translate, parameters: EnduranceParameters): readonly string[] {
  const time = 252_340;
  const value = completeValue(endurance.score(parameters, [{ finished: true, time }]));
  // The watch shows hundredths, which are never written down.
  const shown = `${formatTime(time, false)}.${String((time % 1000) / 10).padStart(2, "0")}`;
  return [t("sheet.example", { shown, mark: endurance.write(value, "cm").number })];
}
