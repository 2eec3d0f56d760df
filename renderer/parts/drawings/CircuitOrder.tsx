import { useTranslation } from "react-i18next";
import type { ParametersOf } from "../../../electron/domain/tests/registry.ts";
import { ExerciseFigure } from "./ExerciseFigure.tsx";
import css from "./Strip.module.css";

interface CircuitOrderProps {
  readonly parameters: ParametersOf<"endurance">;
  /** The exercise of the round that is under way, from 0: for a screen that follows. */
  readonly current?: number;
}

/** One round in order, the counts large, and the way back to its start. Grows with the size of its type. */
export function CircuitOrder({ parameters: { rounds, exercises }, current }: CircuitOrderProps) {
  const { t } = useTranslation("instructions");
  return (
    <div className={css.circuit}>
      <ol className={css.strip} data-kind="circuit" aria-label={t("drawing.circuit.title")}>
        {exercises.map(({ exercise, count, sides }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an exercise may come twice in a round, and the order is frozen
          <li key={index} className={css.stop} aria-current={index === current ? "step" : undefined}>
            <ExerciseFigure exercise={exercise} />
            <span className={css.count}>{count}</span>
            <strong className={css.name}>{t(`exercise.${exercise}`)}</strong>
            {sides === 2 && (
              <span className={css.side}>{t("drawing.circuit.sides", { count: count / 2 })}</span>
            )}
          </li>
        ))}
      </ol>
      <p className={css.again}>
        <strong>{t("drawing.circuit.rounds", { count: rounds })}</strong>
      </p>
    </div>
  );
}
