import { useTranslation } from "react-i18next";
import type { HeatView, LiveHeat } from "../../../../tests/live/types.ts";
import type { HeatOutboxView } from "../sync/outgoing.ts";
import css from "./HeatNotes.module.css";

interface HeatNotesProps {
  readonly heat: LiveHeat;
  readonly outbox: HeatOutboxView;
  readonly view: HeatView;
}

/** Notes what to know about a running heat: a less certain clock, or unsent taps. */
export function HeatNotes({ heat, outbox, view }: HeatNotesProps) {
  const { t } = useTranslation("live");
  return (
    <div role="status">
      {!view.open && <p className={css.note}>{t("note.closed")}</p>}
      {heat.clock === "wall" && <p className={css.note}>{t("note.wall")}</p>}
      {outbox.state === "waiting" && (
        <p className={css.note}>{t("note.waiting", { count: outbox.unsent })}</p>
      )}
    </div>
  );
}
