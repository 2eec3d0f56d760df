import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { useTRPC } from "../../app/client.tsx";
import { useTestWords } from "../../app/testWords.ts";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useWriteSeen } from "../../tests/seen.ts";
import { useWriteDay, useWriteTime, writeMoment } from "../../words/dates.ts";
import { useLengthUnit } from "../../words/lengths.ts";
import { useMarkText } from "../../words/marks.ts";
import { ApartMarks } from "./ApartMarks.tsx";
import css from "./AthletePage.module.css";
import { Consents } from "./Consents.tsx";
import { HeldSection } from "./held/HeldSection.tsx";
import { AllSeries } from "./Series.tsx";
import { Today } from "./Today.tsx";
import type { AthletePage, PastResult } from "./types.ts";
import { VoidPastDialog } from "./VoidPastDialog.tsx";

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

interface PastResultsProps {
  readonly athleteId: number;
  readonly lengths: LengthUnit;
}

/** Lists the imported results; each can be corrected or removed with a reason, which stays visible. */
function PastResults({ athleteId, lengths }: PastResultsProps) {
  const { t, i18n } = useTranslation("planning");
  const trpc = useTRPC();
  const testWord = useTestWords();
  const markText = useMarkText();
  const writeDay = useWriteDay();
  const [chosen, setChosen] = useState<PastResult | null>(null);
  const past = useQuery(trpc.people.pastResults.queryOptions({ athleteId, lengths }));
  const { standing = [], voided = [] } = past.data ?? {};
  if (standing.length + voided.length === 0) return null;
  const tell = ({ test, date, written }: Pick<PastResult, "test" | "date" | "written">) =>
    `${writeDay(date)}, ${testWord(test, "name")}: ${markText(written)}`;
  return (
    <Section title={t("past.title")}>
      <Stack as="ul" gap={2}>
        {standing.map((mark) => (
          <Row as="li" key={`${mark.date} ${mark.fingerprint}`} gap={4} align="center" between wrap>
            <span>{tell(mark)}</span>
            <Button label={t("past.changeWhich", { what: tell(mark) })} onPress={() => setChosen(mark)}>
              {t("past.change")}
            </Button>
          </Row>
        ))}
        {voided.map((line) => (
          <li key={line.id}>
            <s>{tell(line)}</s>{" "}
            {t(line.instead === null ? "past.removed" : "past.corrected", {
              by: line.by,
              at: writeMoment(line.at, i18n.language),
              reason: line.reason,
              instead: line.instead === null ? "" : markText(line.instead),
            })}
          </li>
        ))}
      </Stack>
      {chosen !== null && (
        <VoidPastDialog
          athleteId={athleteId}
          mark={chosen}
          what={tell(chosen)}
          onClose={() => setChosen(null)}
        />
      )}
    </Section>
  );
}

interface AttemptsProps {
  readonly attempts: AthletePage["attempts"];
  readonly lengths: LengthUnit;
}

type Attempt = AthletePage["attempts"][number];

/** Lists all of today's attempts in the order of entry; void ones stay, with who voided them, when and why. */
function Attempts({ attempts, lengths }: AttemptsProps) {
  const { t } = useTranslation("athletes");
  return (
    <Section title={t("attempts.title")}>
      {attempts.length === 0 ? (
        <p className="small quiet">{t("attempts.none")}</p>
      ) : (
        <ol>
          {attempts.map((attempt) => (
            <AttemptRow key={attempt.attemptId} attempt={attempt} lengths={lengths} />
          ))}
        </ol>
      )}
    </Section>
  );
}

function AttemptRow({ attempt, lengths }: { readonly attempt: Attempt; readonly lengths: LengthUnit }) {
  const { t } = useTranslation("athletes");
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const { test, seen, by, at, note, void: ended } = attempt;
  return (
    <li className={css.attempt} data-void={ended !== null}>
      <span>{writeTime(at)}</span>
      <TestMark test={test} size="small" />
      <span>
        <span className={css.seen}>{writeSeen(test, seen, lengths)}</span>
        {note !== "" && <span className="small quiet"> {note}</span>}
        {ended !== null && (
          <span className={`small ${css.ended}`}>
            {t("attempts.void", { reason: ended.reason, by: ended.by, time: writeTime(ended.at) })}
          </span>
        )}
      </span>
      <span>{by}</span>
    </li>
  );
}
