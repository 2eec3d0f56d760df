import { useQuery } from "@tanstack/react-query";
import { memo, useState } from "react";
import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../app/client.tsx";
import { useNow } from "../../app/now.ts";
import { useStanding } from "../../app/standing.tsx";
import { isSameRow, useSteady } from "../../app/steady.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { useWriteTime } from "../../words/dates.ts";
import { useSay } from "../../words/say.ts";
import css from "./Queue.module.css";
import { useWriteReady } from "./readyTime.ts";
import type { QueuePlace, StationPerson, StationView } from "./types.ts";

/** Places of a queue that are shown until somebody asks for all, and all that a station reads after each change. */
export const fewInQueue = 8;

interface QueueProps extends QueueActions {
  readonly test: TestCode;
  /** The station with the beginning of its queue. */
  readonly view: StationView;
  readonly lengths: LengthUnit;
  readonly onCallNext: () => void;
  readonly onTakeBack: (athleteId: number) => void;
}

/** Lists the waiting athletes in turn: called ones on top, then by the length of the wait. */
export function Queue(props: QueueProps) {
  const { test, view, lengths, onCallNext, onTakeBack } = props;
  const { t } = useTranslation("station");
  const trpc = useTRPC();
  const [all, setAll] = useState(false);
  const whole = useQuery(trpc.station.view.queryOptions({ test, lengths }, { enabled: all })).data;
  const now = useNow();
  const actions = { onPick: useSteady(props.onPick), onCall: useSteady(props.onCall) };
  const { post } = useStanding();
  const { queue, skipped, counts } = view;
  // Without the table there is no more of it than its beginning.
  const shown = all && whole !== undefined ? whole.queue : queue;
  return (
    <Stack as="section" gap={3} top className={css.queue} aria-labelledby="queue">
      <Row as="header" gap={4} lines={2} align="center" wrap between>
        <h2 id="queue">
          {t("queue.title")} <span className={`quiet ${css.count}`}>{counts.waiting}</span>
        </h2>
        <Button hint="Alt+N" onPress={onCallNext} disabled={queue.length === 0}>
          {t("queue.callNext")}
        </Button>
      </Row>
      {queue.length === 0 && (
        <p className="quiet">
          <strong>{t("queue.empty")}</strong> {t("queue.emptyHow")}
        </p>
      )}
      <Stack as="ol">
        {shown.map((place) => (
          <Waiting key={place.who.athleteId} place={place} now={now} {...actions} />
        ))}
      </Stack>
      {counts.waiting > fewInQueue && (
        <Button onPress={() => setAll(!all)}>
          {all ? t("queue.fewer") : t("queue.more", { count: counts.waiting - fewInQueue })}
        </Button>
      )}
      {skipped.length > 0 && post.role === "organiser" && (
        <Skipped skipped={skipped} onTakeBack={onTakeBack} />
      )}
    </Stack>
  );
}

/** Drawn again when something of it changes, and not at every result of the station. */
const Waiting = memo(QueueRow, isSameRow<QueueRowProps>);

interface SkippedProps {
  readonly skipped: StationView["skipped"];
  readonly onTakeBack: (athleteId: number) => void;
}

/** Lists the athletes who skip this test and why; each can be put back. */
function Skipped({ skipped, onTakeBack }: SkippedProps) {
  const { t } = useTranslation("station");
  return (
    <Stack gap={2} className="small">
      <h3>{t("queue.skipped")}</h3>
      <ul>
        {skipped.map(({ who, reason, by }) => (
          <Row as="li" key={who.athleteId} gap={3} align="center" between className={css.skip}>
            <span>{t("queue.skippedOne", { bib: who.bib, name: who.name, reason, by })}</span>
            <Button
              label={t("queue.takeBackWho", { bib: who.bib, name: who.name })}
              onPress={() => onTakeBack(who.athleteId)}
            >
              {t("queue.takeBack")}
            </Button>
          </Row>
        ))}
      </ul>
    </Stack>
  );
}

interface QueueActions {
  readonly onPick: (bib: number) => void;
  readonly onCall: (who: StationPerson, called: boolean) => void;
}

interface QueueRowProps extends QueueActions {
  readonly place: QueuePlace;
  /** Ms since 1970. */
  readonly now: number;
}

/** Shows one waiting athlete; a press opens them in the entry. */
function QueueRow({ place, now, onPick, onCall }: QueueRowProps) {
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
        <span className={`numeral ${css.bib}`}>{who.bib}</span>
        <span className={css.who}>
          <span className={`strong ${css.name}`}>{who.name}</span>
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
