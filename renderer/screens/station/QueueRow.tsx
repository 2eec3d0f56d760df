import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { useWriteTime } from "../../words/dates.ts";
import { useSay } from "../../words/say.ts";
import css from "./Queue.module.css";
import { useWriteReady } from "./readyTime.ts";
import type { QueuePlace, StationPerson } from "./types.ts";

export interface QueueActions {
  readonly onPick: (bib: number) => void;
  readonly onCall: (who: StationPerson, called: boolean) => void;
}

interface QueueRowProps extends QueueActions {
  readonly place: QueuePlace;
  /** Ms since 1970. */
  readonly now: number;
}

/** Shows one waiting athlete; a press opens them in the entry. */
export function QueueRow({ place, now, onPick, onCall }: QueueRowProps) {
  const { t } = useTranslation("station");
  const say = useSay();
  const writeTime = useWriteTime();
  const writeReady = useWriteReady();
  const { who, calledAt, calledElsewhere, begun } = place;
  const called = calledAt !== null;
  const resting = Date.parse(place.readyAt) > now;
  const named = { bib: who.bib, name: who.name };
  return (
    <li className={css.row} data-called={called}>
      <button type="button" className={css.pick} onClick={() => who.bib !== null && onPick(who.bib)}>
        <span className={css.bib}>{who.bib}</span>
        <span className={css.who}>
          <span className={css.name}>{who.name}</span>
          <Row as="span" gap={3} lines={0} wrap className="small quiet">
            {called && (
              <strong>
                {calledElsewhere === null
                  ? t("queue.calledSince", { time: writeTime(calledAt) })
                  : t("queue.calledElsewhere", { time: writeTime(calledAt), who: calledElsewhere })}
              </strong>
            )}
            {!called && resting && t("queue.rests", { time: writeReady(place.readyAt) })}
            {!called && !resting && t("queue.waits", { time: writeTime(place.waitingSince) })}
            {begun !== null && <strong className={css.begun}>{say(begun)}</strong>}
          </Row>
        </span>
      </button>
      <Button
        label={called ? t("queue.uncallWho", named) : t("queue.callWho", named)}
        onPress={() => onCall(who, called)}
      >
        {called ? t("queue.uncall") : t("queue.call")}
      </Button>
    </li>
  );
}
