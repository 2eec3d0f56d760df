import { useTranslation } from "react-i18next";
import {
  type CoreParameters,
  type Stage,
  type StageName,
  stageAt,
} from "../../../electron/domain/tests/core/protocol.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { useSay } from "../../words/say.ts";
import css from "../Strip.module.css";
import { CoreFigure } from "./Figure.tsx";
import { stagesOf } from "./rules.ts";

/** Draws a round of stages and the first of the next: they go on without end. */
export function Drawing({ parameters }: { readonly parameters: CoreParameters }) {
  const { t } = useTranslation("core");
  return (
    <>
      <figcaption>{t("drawing.title")}</figcaption>
      <CoreStages stages={[...stagesOf(parameters), stageAt(parameters, parameters.cycle)]} />
    </>
  );
}

interface CoreStagesProps {
  /** The stages in order. */
  readonly stages: readonly Stage[];
  /** The current stage: for a screen that follows. */
  readonly current?: StageName;
}

/** Draws the stages of the plank side by side, each with its start time. Scales with its font size. */
function CoreStages({ stages, current }: CoreStagesProps) {
  const { t } = useTranslation("core");
  const say = useSay();
  return (
    <ol className={css.strip} data-kind="stages" aria-label={t("drawing.title")}>
      {stages.map((stage) => (
        <li key={stage.from} className={css.stop} aria-current={stage.name === current ? "step" : undefined}>
          <span className={css.time}>{formatTime(stage.from * 1000, false)}</span>
          <CoreFigure stage={stage.name} />
          <span>{say(stage.sentence)}</span>
        </li>
      ))}
    </ol>
  );
}
