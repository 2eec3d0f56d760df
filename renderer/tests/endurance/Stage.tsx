import { useTranslation } from "react-i18next";
import type { EnduranceParameters } from "../../../electron/domain/tests/endurance/protocol.ts";
import { KeyHint } from "../../parts/controls/KeyHint.tsx";
import { BigClock } from "../live/BigClock.tsx";
import { BigKey } from "../live/BigKey.tsx";
import type { LaneProps, StageProps } from "../live/tool.ts";
import { keepHowFar, setReps, stillGoing, useStopped } from "./control.ts";
import { ExerciseFigure } from "./ExerciseFigure.tsx";
import { exerciseAt, repsBefore } from "./howFar.ts";
import orderCss from "./Order.module.css";
import css from "./Stage.module.css";

/** Shows one clock for everybody, without tenths: it runs and hurries nobody. Beside it the order of a round. */
export function EnduranceStage({ live }: StageProps<"endurance">) {
  const { t } = useTranslation("endurance");
  const asked = useStopped(live);
  return (
    <div className={css.stage} data-test="endurance">
      <div className={css.clock}>
        <BigClock clock={live.clock} />
      </div>
      {asked === null ? (
        <div className="small">
          <p className={css.how}>{t("live.how")}</p>
          <Order exercises={live.parameters.exercises} />
        </div>
      ) : (
        <HowFar live={live} lane={asked.lane} reps={asked.stopped.reps} />
      )}
    </div>
  );
}

interface HowFarProps extends LaneProps<"endurance"> {
  readonly reps: number;
}

/** Asks how far a stopped athlete came: the exercise, then its reps. The clock and the other lanes go on. */
function HowFar({ live, lane, reps }: HowFarProps) {
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
      <p>
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
      <p className="strong">{t("live.stoppedAt", { rounds: lane.state.splits.length, reps })}</p>
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

/** Shows one round in order: count, exercise and its figure, low enough to leave room for the lanes. */
function Order({ exercises }: Pick<EnduranceParameters, "exercises">) {
  const { t } = useTranslation("endurance");
  return (
    <ol className={orderCss.order} aria-label={t("drawing.title")}>
      {exercises.map(({ exercise, count, sides }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an exercise may come twice in a round, and the order is frozen
        <li key={index} className={orderCss.exercise}>
          <span className={orderCss.figure}>
            <ExerciseFigure exercise={exercise} />
          </span>
          <strong className={`figures ${orderCss.count}`}>{count}</strong>
          <span className={orderCss.name}>
            <strong>{t(`exercise.${exercise}`)}</strong>
            {sides === 2 && <span className="small quiet">{t("drawing.sides", { count: count / 2 })}</span>}
          </span>
        </li>
      ))}
    </ol>
  );
}
