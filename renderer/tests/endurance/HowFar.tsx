import { useTranslation } from "react-i18next";
import { KeyHint } from "../../parts/controls/KeyHint.tsx";
import { BigKey } from "../live/BigKey.tsx";
import type { LaneProps } from "../live/tool.ts";
import { keepHowFar, setReps, stillGoing } from "./control.ts";
import css from "./HowFar.module.css";
import { exerciseAt, repsBefore } from "./howFar.ts";

interface HowFarProps extends LaneProps<"endurance"> {
  readonly reps: number;
}

/** Asks how far a stopped athlete came: the exercise, then its reps. The clock and the other lanes go on. */
export function HowFar({ live, lane, reps }: HowFarProps) {
  const { t } = useTranslation("endurance");
  const { parameters } = live;
  const here = exerciseAt(parameters, reps);
  const starts = repsBefore(parameters);
  return (
    <section
      className={css.question}
      data-asks
      aria-label={t("live.notFinished.title", { bib: lane.in.who.bib ?? 0 })}
    >
      <h2 className={css.title}>{t("live.notFinished.title", { bib: lane.in.who.bib ?? 0 })}</h2>
      <p className={css.how}>
        {t("live.notFinished.in", { count: lane.state.splits.length })} <KeyHint keys="←" />{" "}
        <KeyHint keys="→" />
      </p>
      <div className={css.exercises}>
        {parameters.exercises.map(({ exercise, count }, index) => (
          <BigKey
            // biome-ignore lint/suspicious/noArrayIndexKey: an exercise may come twice in a round, and the order is frozen
            key={index}
            pressed={index === here}
            onPress={() => setReps(live, () => starts[index] ?? 0)}
          >
            {count} {t(`exercise.${exercise}`)}
          </BigKey>
        ))}
      </div>
      <div className={css.steps}>
        <BigKey hint="↓" label={t("live.notFinished.less")} onPress={() => setReps(live, (n) => n - 1)}>
          −
        </BigKey>
        <p className={css.count} role="status">
          <span className={css.number}>{reps - (starts[here] ?? 0)}</span>
          <span>{t("live.notFinished.of", { count: parameters.exercises[here]?.count ?? 0 })}</span>
        </p>
        <BigKey hint="↑" label={t("live.notFinished.more")} onPress={() => setReps(live, (n) => n + 1)}>
          +
        </BigKey>
      </div>
      <p className={css.sum}>{t("live.stoppedAt", { rounds: lane.state.splits.length, reps })}</p>
      <div className={css.reps}>
        <BigKey kind="next" hint="Enter" onPress={(timeStamp) => keepHowFar(live, timeStamp)}>
          {t("live.notFinished.yes")}
        </BigKey>
        <BigKey hint="Esc" onPress={stillGoing}>
          {t("live.notFinished.no")}
        </BigKey>
      </div>
    </section>
  );
}
