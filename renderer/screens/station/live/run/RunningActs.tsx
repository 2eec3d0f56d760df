import { useTranslation } from "react-i18next";
import { clockOf } from "../../../../../electron/domain/heats/fold.ts";
import { KeyHint } from "../../../../parts/controls/KeyHint.tsx";
import { BigKey } from "../../../../tests/live/BigKey.tsx";
import type { Live } from "../../../../tests/live/tool.ts";
import type { HeatOutboxView } from "../sync/outgoing.ts";
import css from "./Running.module.css";
import { UndoKey } from "./UndoKey.tsx";

/** The next step after this heat: more athletes into it, the next heat, its end since nobody waits, or none yet. */
type After = "call" | "next" | "finish" | null;

interface RunningActsProps {
  readonly live: Live;
  readonly outbox: HeatOutboxView;
  readonly after: After;
  readonly onAfter: () => void;
  readonly onEnd: () => void;
}

const words = { call: "gather.callNext", next: "running.nextHeat", finish: "running.finish" } as const;

/** Shows, under the lanes, undo, the next step, the end, and whether the desk has everything. */
export function RunningActs({ live, outbox, after, onAfter, onEnd }: RunningActsProps) {
  const { t } = useTranslation(["live", "cautions"]);
  return (
    <div className={css.acts}>
      {after !== null && (
        <BigKey kind={after === "call" ? "plain" : "next"} size="large" hint="N" onPress={onAfter}>
          {t(words[after])}
        </BigKey>
      )}
      <UndoKey live={live} />
      <span className={css.saved} data-state={outbox.state}>
        {t(`saved.${outbox.state}`)}
      </span>
      {after !== "finish" && (
        <BigKey kind="quiet" hint="X" onPress={onEnd}>
          {t(after === "next" ? "running.finish" : "running.end")}
        </BigKey>
      )}
      {clockOf(live.test) === "own" && live.lanes.length > 1 && (
        <span className={css.between}>
          <KeyHint keys={t("running.pageUp")} />
          <KeyHint keys={t("running.pageDown")} does={t("running.otherLane")} />
        </span>
      )}
      {(after === null || after === "call") && <p className={css.caution}>{t("cautions:stop")}</p>}
    </div>
  );
}
