import { useTranslation } from "react-i18next";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";

interface ClosedDay {
  readonly id: number;
  readonly title: string;
  /** ISO 8601; null where it is unknown. */
  readonly closedOn: string | null;
}

/** Lists the next steps for a day that was closed today, before anything else on the first screen. */
export function JustClosed({ days, today }: { readonly days: readonly ClosedDay[]; readonly today: string }) {
  const { t } = useTranslation("planning");
  const day = days.find(({ closedOn }) => closedOn === today);
  if (day === undefined) return null;
  return (
    <Panel paper title={t("closed.title", { title: day.title })}>
      <p>{t("closed.what")}</p>
      <Row gap={3} lines={2} wrap>
        <LinkButton kind="primary" size="large" to={`/summary/${day.id}`}>
          {t("closed.summary")}
        </LinkButton>
        <LinkButton size="large" to={`/cards/${day.id}/all`}>
          {t("closed.cards")}
        </LinkButton>
        <LinkButton size="large" to="/bundle">
          {t("closed.share")}
        </LinkButton>
      </Row>
    </Panel>
  );
}
