import { useTranslation } from "react-i18next";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import type { Overview } from "./overview.ts";

type League = Overview["leagues"][number];

function listed({ counts }: League): number {
  return Object.values(counts).reduce((total, value) => total + value, 0);
}

interface LeaguesProps {
  readonly leagues: Overview["leagues"];
  /** True if athletes can have cards: once the day is open. */
  readonly cards: boolean;
}

/** Shows the progress of each league, with links to its athletes' cards. */
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
          column("league", t("leagues.league"), "auto", ({ league }) => league),
          numberColumn("listed", t("leagues.listed"), "8rem", listed),
          numberColumn("expected", t("leagues.expected"), "8rem", ({ counts }) => counts.expected),
          numberColumn("here", t("leagues.here"), "8rem", ({ counts }) => counts.testing),
          numberColumn("finished", t("leagues.finished"), "8rem", ({ finished }) => finished),
        ]}
      />
    </Section>
  );
}
