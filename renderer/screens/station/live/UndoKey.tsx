import { useTranslation } from "react-i18next";
import { undoable } from "../../../../electron/domain/heats/fold.ts";
import { BigKey } from "./BigKey.tsx";
import type { Live } from "./tool.ts";
import { takeBack } from "./useLive.ts";

/** Takes the last tap back while it is young, and says which one that is. */
export function UndoKey({ live }: { readonly live: Live }) {
  const { t } = useTranslation("live");
  const last = undoable(live.heat.events as never, live.elapsedMs);
  if (last === null) return null;
  const { event, leftMs } = last;
  return (
    <BigKey size="large" hint="Backspace" onPress={() => takeBack(live, event.id)}>
      {t("undo.do", {
        what: t(`undo.kind.${event.kind}` as "undo.kind.round"),
        lane: event.lane ?? "",
        count: Math.max(1, Math.ceil(leftMs / 1000)),
      })}
    </BigKey>
  );
}
