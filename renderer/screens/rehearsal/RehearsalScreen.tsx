import { type ReactNode, useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { Progress } from "../../parts/layout/Progress.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { useSay } from "../../words/say.ts";
import { Outcome } from "./Outcome.tsx";
import css from "./RehearsalScreen.module.css";
import { isAboutHeaders, slots } from "./rehearsed.ts";
import { SayOfSheet } from "./SayOfSheet.tsx";
import { Slot } from "./Slot.tsx";
import { type Rehearsal, useRehearsal } from "./useRehearsal.ts";

/** Rehearses a day with the leagues' sheets: choose them, start it, look at the result. */
export function RehearsalScreen() {
  const { t } = useTranslation("rehearsal");
  const rehearsal = useRehearsal();
  const { choice, standing } = rehearsal;
  const busy = standing.at === "bringing" || standing.at === "working";
  return (
    <Screen title={t("title")} lead={t("lead")} ready>
      <div className={css.slots}>
        {slots.map((kind) => (
          <Slot key={kind} kind={kind} rehearsal={rehearsal} disabled={busy} />
        ))}
      </div>
      {choice.roster.length > 0 && (
        <div>
          <Button
            kind={standing.at === "done" ? "quiet" : "primary"}
            size="large"
            busy={busy}
            onPress={rehearsal.start}
          >
            {standing.at === "done" ? t("again") : t("go")}
          </Button>
        </div>
      )}
      <WhatComes rehearsal={rehearsal} />
    </Screen>
  );
}

function WhatComes({ rehearsal }: { readonly rehearsal: Rehearsal }) {
  const { t } = useTranslation("rehearsal");
  const say = useSay();
  const { standing } = rehearsal;
  switch (standing.at) {
    case "choosing":
      return null;
    case "bringing":
      return <Progress label={t("working.label")} done={null} total={1} />;
    case "working": {
      const { step, done, total } = standing;
      return <Progress label={t("working.label")} done={done} total={total} words={t(`working.${step}`)} />;
    }
    case "refused":
      return (
        <InSight>
          <Panel tone="alert">
            <div role="alert">
              <p className={`lead strong ${css.verdict}`}>{t(`refused.${standing.sheet}`)}</p>
              <p>{say(standing.sentence)}</p>
              {isAboutHeaders(standing.sentence) && <p>{t("refused.headers")}</p>}
            </div>
          </Panel>
          {standing.unread !== null && (
            <SayOfSheet kind={standing.sheet} unread={standing.unread} rehearsal={rehearsal} />
          )}
        </InSight>
      );
    case "done":
      return (
        <InSight>
          <Outcome rehearsed={standing.rehearsed} rehearsal={rehearsal} />
        </InSight>
      );
  }
}

/** Scrolls the result into view, clear of the foot: it begins below the sheets, perhaps below the window. */
function InSight({ children }: { readonly children: ReactNode }) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const isTall = (place.current?.offsetHeight ?? 0) > innerHeight / 2;
    place.current?.scrollIntoView({ block: isTall ? "start" : "center" });
  }, []);
  return <div ref={place}>{children}</div>;
}
