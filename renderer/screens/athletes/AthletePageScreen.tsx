import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { useLengthUnit } from "../../words/lengths.ts";
import { ApartMarks } from "./ApartMarks.tsx";
import css from "./AthletePage.module.css";
import { Attempts } from "./Attempts.tsx";
import { Consents } from "./Consents.tsx";
import { HeldSection } from "./held/HeldSection.tsx";
import { PastResults } from "./PastResults.tsx";
import { AllSeries } from "./Series.tsx";
import { Today } from "./Today.tsx";
import type { AthletePage } from "./types.ts";

/** Shows one athlete: today's marks, every attempt, the marks before, and the consents. */
export function AthletePageScreen({ athleteId }: { readonly athleteId: number }) {
  const { t } = useTranslation(["athletes", "cards"]);
  const trpc = useTRPC();
  const { lengths } = useLengthUnit();
  const page = useQuery(trpc.people.get.queryOptions({ athleteId, lengths }));
  return (
    <Screen
      title={page.data?.name ?? t("title")}
      lead={page.data !== undefined && <Facts athlete={page.data} />}
      actions={<LinkButton to={`/cards/current/athlete-${athleteId}`}>{t("cards:linkOne")}</LinkButton>}
      ready={page.isFetched}
    >
      <Answer query={page}>
        {(athlete) => (
          <>
            <div className={css.halves}>
              <Today athlete={athlete} lengths={lengths} />
              <Consents athlete={athlete} />
            </div>
            <AllSeries athlete={athlete} lengths={lengths} />
            <ApartMarks apart={athlete.apart} />
            <PastResults athleteId={athleteId} lengths={lengths} />
            <Attempts attempts={athlete.attempts} lengths={lengths} />
            <HeldSection athlete={athlete} />
          </>
        )}
      </Answer>
    </Screen>
  );
}

function Facts({ athlete }: { readonly athlete: AthletePage }) {
  const { t } = useTranslation("athletes");
  const { number, league, birthYear, category } = athlete;
  return (
    <Row as="span" gap={4} lines={1} wrap>
      <span>{number === "" ? t("who.noNumber") : t("who.number", { number })}</span>
      <span>{league}</span>
      {birthYear !== null && <span>{t("who.born", { year: birthYear })}</span>}
      {category !== null && <span>{t(`who.category.${category}`)}</span>}
    </Row>
  );
}
