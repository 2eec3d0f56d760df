import { useTranslation } from "react-i18next";
import { undoable } from "../../../../../electron/domain/heats/fold.ts";
import { undoMs } from "../../../../../electron/domain/heats/heat.ts";
import { useTestWords } from "../../../../app/testWords.ts";
import { BigKey } from "../../../../tests/live/BigKey.tsx";
import type { Live } from "../../../../tests/live/tool.ts";
import { takeBack } from "../sync/useLive.ts";
import css from "./UndoKey.module.css";

/** Undoes the last tap while it is recent; names it, and a tape shows the time left. */
export function UndoKey({ live }: { readonly live: Live }) {
  const { t } = useTranslation("live");
  const testWord = useTestWords();
  const last = undoable(live.heat.events as never, live.elapsedMs);
  if (last === null) return null;
  const { event, leftMs } = last;
  return (
    <div className={css.undo}>
      <BigKey hint="Backspace" onPress={() => takeBack(live, event.id)}>
        {t("undo.do", {
          what: event.kind === "aside" ? t("undo.aside") : testWord(live.test, `tap.${event.kind}`),
          lane: event.lane ?? "",
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
