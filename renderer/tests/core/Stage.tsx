import { useTranslation } from "react-i18next";
import { warningMs } from "../../../electron/domain/tests/core/cues.ts";
import { type Stage, stageAt } from "../../../electron/domain/tests/core/protocol.ts";
import { useSay } from "../../words/say.ts";
import { BigClock } from "../live/BigClock.tsx";
import type { StageProps } from "../live/tool.ts";
import { CoreFigure } from "./Figure.tsx";
import css from "./Stage.module.css";

/** Shows one clock for everybody, the current stage, drawn and named, and the time until the next one. */
export function CoreStage({ live }: StageProps<"core">) {
  const { t } = useTranslation("core");
  const { parameters, elapsedMs } = live;
  const seconds = Math.max(0, elapsedMs / 1000);
  const now = stageAt(parameters, seconds);
  const next = stageAt(parameters, now.until);
  return (
    <div className={css.stage}>
      <BigClock clock={live.clock} />
      <Held stage={now} label={t("live.now")} kind="now" />
      <Held
        stage={next}
        label={t("live.next", { count: Math.max(1, Math.ceil(now.until - seconds)) })}
        kind="next"
        isNear={now.until * 1000 - elapsedMs <= warningMs}
      />
    </div>
  );
}

interface HeldProps {
  readonly stage: Stage;
  readonly label: string;
  readonly kind: "now" | "next";
  /** True if it comes soon. */
  readonly isNear?: boolean;
}

function Held({ stage, label, kind, isNear = false }: HeldProps) {
  const say = useSay();
  return (
    <section className={css.held} data-kind={kind} data-near={isNear}>
      <span className={css.label}>{label}</span>
      <div className={css.figure}>
        <CoreFigure stage={stage.name} />
      </div>
      {/* Read out once a stage: what is held is news to whoever can't see the drawing. */}
      <strong className={css.name} {...(kind === "now" && { role: "status" })}>
        {say(stage.sentence)}
      </strong>
    </section>
  );
}
