import { useTranslation } from "react-i18next";
import type { EnduranceParameters } from "../../../electron/domain/tests/endurance/protocol.ts";
import css from "../Strip.module.css";
import { ExerciseFigure } from "./ExerciseFigure.tsx";

/** Draws one round in order, with large counts and the way back to its start. Scales with its font size. */
export function Round({ parameters: { rounds, exercises } }: { readonly parameters: EnduranceParameters }) {
  const { t } = useTranslation("endurance");
  return (
    <div className={css.round}>
      <ol className={css.strip} data-kind="round" aria-label={t("drawing.title")}>
        {exercises.map(({ exercise, count, sides }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an exercise may come twice in a round, and the order is frozen
          <li key={index} className={css.stop}>
            <ExerciseFigure exercise={exercise} />
            <span className={`figures ${css.count}`}>{count}</span>
            <strong>{t(`exercise.${exercise}`)}</strong>
            {sides === 2 && <span className={css.side}>{t("drawing.sides", { count: count / 2 })}</span>}
          </li>
        ))}
      </ol>
      <p className={css.again}>
        <strong>{t("drawing.rounds", { count: rounds })}</strong>
      </p>
    </div>
  );
}
