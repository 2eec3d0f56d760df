import { useTranslation } from "react-i18next";
import { clockOf, undoable } from "../../../../../electron/domain/heats/fold.ts";
import { undoMs } from "../../../../../electron/domain/heats/heat.ts";
import { formatLength } from "../../../../../electron/domain/units.ts";
import { useTestWords } from "../../../../app/testWords.ts";
import { KeyHint } from "../../../../parts/controls/KeyHint.tsx";
import { Row } from "../../../../parts/flow/Stack.tsx";
import { BigKey } from "../../../../tests/live/BigKey.tsx";
import type { Live } from "../../../../tests/live/tool.ts";
import { toolOf } from "../../../../tests/tools.ts";
import { useShowNumber } from "../../../../words/numbers.ts";
import type { HeatOutboxView } from "../sync/outgoing.ts";
import css from "./Running.module.css";

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
      {after !== "finish" && (
        <BigKey kind="quiet" hint="X" onPress={onEnd}>
          {t(after === "next" ? "running.finish" : "running.end")}
        </BigKey>
      )}
      {/* The place of what comes and goes is kept: nothing else may move then. */}
      <div className={css.undo}>
        <UndoKey live={live} />
      </div>
      <span className={`small quiet ${css.saved}`} data-state={outbox.state}>
        {t(`saved.${outbox.state}`)}
      </span>
      {clockOf(live.test) === "own" && live.lanes.length > 1 && (
        <Row as="span" gap={2} align="center" wrap className="small">
          <KeyHint keys={t("running.pageUp")} />
          <KeyHint keys={t("running.pageDown")} does={t("running.otherLane")} />
        </Row>
      )}
      {(after === null || after === "call") && (
        <p className={`small quiet ${css.caution}`}>{t("cautions:stop")}</p>
      )}
    </div>
  );
}

/** Undoes the last tap while it is recent; names it, and a tape shows the time left. */
function UndoKey({ live }: { readonly live: Live }) {
  const { t } = useTranslation(["live", "common"]);
  const show = useShowNumber();
  const testWord = useTestWords();
  const last = undoable(live.heat.events as never, live.elapsedMs);
  if (last === null) return null;
  const { event, leftMs } = last;
  const who = live.lanes.find(({ lane }) => lane === event.lane)?.in.who;
  const word = event.kind === "aside" ? t("undo.aside") : testWord(live.test, `tap.${event.kind}`);
  const grains = toolOf(live.test).lengthOf?.(event as never) ?? null;
  const length =
    grains === null ? "" : `${show(formatLength(grains, live.lengths))} ${t(`common:unit.${live.lengths}`)}`;
  return (
    <div className={css.undoing}>
      <BigKey hint="Backspace" onPress={() => live.takeBack(event.id)}>
        {t(who === undefined ? "undo.all" : "undo.do", {
          what: [word, length].filter((part) => part !== "").join(" "),
          bib: who?.bib ?? "",
          name: who?.name ?? "",
          count: Math.max(1, Math.ceil(leftMs / 1000)),
        })}
      </BigKey>
      <span
        className={css.left}
        style={{ transform: `scaleX(${Math.min(1, Math.max(0, leftMs / undoMs)).toFixed(3)})` }}
      />
    </div>
  );
}
