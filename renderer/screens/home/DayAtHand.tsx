import { useTranslation } from "react-i18next";
import { writeDate } from "../../app/dates.ts";
import { LinkButton } from "../../parts/Button.tsx";
import { Panel } from "../../parts/Panel.tsx";

interface DayAtHandProps {
  readonly day: { readonly title: string; readonly date: string };
}

/** The way back into the day that was begun. */
export function DayAtHand({ day }: DayAtHandProps) {
  const { t, i18n } = useTranslation("home");
  return (
    <Panel paper title={day.title}>
      <p>{writeDate(day.date, i18n.language)}</p>
      <div>
        <LinkButton kind="primary" size="large" to="/day">
          {t("own.resume")}
        </LinkButton>
      </div>
    </Panel>
  );
}
