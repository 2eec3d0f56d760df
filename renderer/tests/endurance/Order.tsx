import { useTranslation } from "react-i18next";
import type { EnduranceParameters } from "../../../electron/domain/tests/endurance/protocol.ts";
import { ExerciseFigure } from "./ExerciseFigure.tsx";
import css from "./Order.module.css";

/** Shows one round in order: count, exercise and its figure, low enough to leave room for the lanes. */
export function Order({ exercises }: Pick<EnduranceParameters, "exercises">) {
  const { t } = useTranslation("endurance");
  return (
    <ol className={css.order} aria-label={t("drawing.title")}>
      {exercises.map(({ exercise, count, sides }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an exercise may come twice in a round, and the order is frozen
        <li key={index} className={css.exercise}>
          <span className={css.figure}>
            <ExerciseFigure exercise={exercise} />
          </span>
          <strong className={css.count}>{count}</strong>
          <span className={css.name}>
            <strong>{t(`exercise.${exercise}`)}</strong>
            {sides === 2 && <span className={css.side}>{t("drawing.sides", { count: count / 2 })}</span>}
          </span>
        </li>
      ))}
    </ol>
  );
}
