import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { writeDate } from "../../words/dates.ts";
import css from "./HomeScreen.module.css";
import { ReopenDay } from "./ReopenDay.tsx";

interface EarlierDaysProps {
  readonly days: readonly { readonly id: number; readonly title: string; readonly date: string }[];
  /** True if a closed day can be opened again: while no other day is planned or open. */
  readonly reopening: boolean;
}

/** Lists the closed days, newest first, with what can still be done with each. */
export function EarlierDays({ days, reopening }: EarlierDaysProps) {
  const { t, i18n } = useTranslation(["home", "cards"]);
  return (
    <Panel paper title={t("earlier.title")}>
      <Stack as="ul" gap={2} className={css.earlier}>
        {days.map((day) => (
          <li key={day.id}>
            <strong>{day.title}</strong>
            <span>{writeDate(day.date, i18n.language)}</span>
            <Link className={css.summary} href={`/summary/${day.id}`}>
              {t("earlier.summary")}
              <span className="unseen">{day.title}</span>
            </Link>
            <Link className={css.summary} href={`/cards/${day.id}/all`}>
              {t("cards:link")} <span className="unseen">{day.title}</span>
            </Link>
            {reopening && <ReopenDay day={day} />}
          </li>
        ))}
      </Stack>
      <Row gap={3} wrap>
        <LinkButton to="/bundle">{t("earlier.share")}</LinkButton>
        <LinkButton to="/athletes">{t("earlier.athletes")}</LinkButton>
      </Row>
    </Panel>
  );
}
