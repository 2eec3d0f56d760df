import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useNow } from "../../app/now.ts";
import { useStanding } from "../../app/standing.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import css from "./Queue.module.css";
import { type QueueActions, QueueRow } from "./QueueRow.tsx";
import type { StationView } from "./types.ts";

const few = 8;

interface QueueProps extends QueueActions {
  readonly view: StationView;
  readonly onCallNext: () => void;
  readonly onTakeBack: (athleteId: number) => void;
}

/** Lists the waiting athletes in turn: called ones on top, then by the length of the wait. */
export function Queue({ view, onCallNext, onTakeBack, ...actions }: QueueProps) {
  const { t } = useTranslation("station");
  const [all, setAll] = useState(false);
  const now = useNow();
  const { post } = useStanding();
  const { queue, skipped } = view;
  const shown = all ? queue : queue.slice(0, few);
  return (
    <section className={css.queue} aria-labelledby="queue">
      <Row as="header" gap={4} lines={2} align="center" wrap between>
        <h2 id="queue">
          {t("queue.title")} <span className={css.count}>{queue.length}</span>
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
          <QueueRow key={place.who.athleteId} place={place} now={now} {...actions} />
        ))}
      </Stack>
      {queue.length > few && (
        <Button onPress={() => setAll(!all)}>
          {all ? t("queue.fewer") : t("queue.more", { count: queue.length - few })}
        </Button>
      )}
      {skipped.length > 0 && post.role === "organiser" && (
        <Skipped skipped={skipped} onTakeBack={onTakeBack} />
      )}
    </section>
  );
}

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
          <li key={who.athleteId} className={css.skip}>
            <span>{t("queue.skippedOne", { bib: who.bib, name: who.name, reason, by })}</span>
            <Button
              label={t("queue.takeBackWho", { bib: who.bib, name: who.name })}
              onPress={() => onTakeBack(who.athleteId)}
            >
              {t("queue.takeBack")}
            </Button>
          </li>
        ))}
      </ul>
    </Stack>
  );
}
