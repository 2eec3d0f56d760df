import { useTranslation } from "react-i18next";
import { useNow } from "../../../../app/now.ts";
import { Stack } from "../../../../parts/flow/Stack.tsx";
import type { HeatView } from "../../../../tests/live/types.ts";
import { useWriteTime } from "../../../../words/dates.ts";
import { useWriteReady } from "../../readyTime.ts";
import css from "./NextUp.module.css";

/** As many as fit beside the lanes. */
const few = 6;

interface NextUpProps {
  readonly view: HeatView;
  readonly onPick: (bib: number) => void;
}

/** Lists the next athletes in turn; a press puts one into the next free lane. */
export function NextUp({ view, onPick }: NextUpProps) {
  const { t } = useTranslation("live");
  const writeTime = useWriteTime();
  const writeReady = useWriteReady();
  const now = useNow();
  return (
    <Stack as="section" gap={2} aria-labelledby="next-up">
      <h2 id="next-up">{t("next.title")}</h2>
      {view.next.length === 0 && <p className="quiet">{t("next.none")}</p>}
      <Stack as="ol">
        {view.next.slice(0, few).map(({ who, readyAt, calledAt, calledElsewhere, absences }) => (
          <li key={who.athleteId}>
            <button
              type="button"
              className={css.row}
              data-called={calledAt !== null}
              onClick={() => who.bib !== null && onPick(who.bib)}
            >
              <strong className={`figures ${css.bib}`}>{who.bib}</strong>
              <span className="one-line">{who.name}</span>
              <span className={`small quiet ${css.note}`}>
                {calledAt === null
                  ? Date.parse(readyAt) > now && t("next.rests", { time: writeReady(readyAt) })
                  : calledElsewhere === null
                    ? t("next.called", { time: writeTime(calledAt) })
                    : t("next.calledElsewhere", { time: writeTime(calledAt), who: calledElsewhere })}
                {absences > 0 && ` ${t("next.absences", { count: absences })}`}
              </span>
            </button>
          </li>
        ))}
      </Stack>
      {view.waiting > few && <p className="quiet">{t("next.more", { count: view.waiting - few })}</p>}
    </Stack>
  );
}
