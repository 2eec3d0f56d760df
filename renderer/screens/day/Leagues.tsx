import { useTranslation } from "react-i18next";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { DataTable } from "../../parts/layout/DataTable.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import type { Overview } from "./overview.ts";

type League = Overview["leagues"][number];

function listed({ counts }: League): number {
  return Object.values(counts).reduce((total, value) => total + value, 0);
}

interface LeaguesProps {
  readonly leagues: Overview["leagues"];
  /** Whether athletes can have cards: not before the day opens. */
  readonly cards: boolean;
}

/** How far each league is, and the cards that its athletes take home. */
export function Leagues({ leagues, cards }: LeaguesProps) {
  const { t } = useTranslation(["day", "cards"]);
  return (
    <Section
      title={t("leagues.title")}
      {...(cards && { aside: <LinkButton to="/cards">{t("cards:link")}</LinkButton> })}
    >
      <DataTable<League>
        caption={t("leagues.title")}
        rows={leagues}
        rowKey={({ league }) => league}
        columns={[
          { key: "league", head: t("leagues.league"), cell: ({ league }) => league },
          { key: "listed", head: t("leagues.listed"), kind: "number", width: "8rem", cell: listed },
          {
            key: "expected",
            head: t("leagues.expected"),
            kind: "number",
            width: "8rem",
            cell: ({ counts }) => counts.expected,
          },
          {
            key: "here",
            head: t("leagues.here"),
            kind: "number",
            width: "8rem",
            cell: ({ counts }) => counts.testing,
          },
          {
            key: "finished",
            head: t("leagues.finished"),
            kind: "number",
            width: "8rem",
            cell: ({ finished }) => finished,
          },
        ]}
      />
    </Section>
  );
}
