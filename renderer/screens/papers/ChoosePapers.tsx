import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { Button } from "../../parts/controls/Button.tsx";
import { NumberField } from "../../parts/controls/NumberField.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { ChoiceLink, ChoiceList } from "../../parts/layout/ChoiceList.tsx";
import css from "./Papers.module.css";
import { useWhatText, useWhoText } from "./usePapers.ts";
import { bibsOf, chosenOf, mostBibs, nameOf, type Papers, type What, type Who, whats } from "./which.ts";

interface ChoosePapersProps {
  readonly papers: Papers;
  readonly what: What;
  readonly who: Who;
}

/** What is printed, and for whom. */
export function ChoosePapers({ papers, what, who }: ChoosePapersProps) {
  const { t } = useTranslation("papers");
  const whatText = useWhatText();
  const whoText = useWhoText();
  const whos: Who[] = [
    ...(["all", "here", "expected"] as const).map((kind): Who => ({ kind })),
    ...papers.leagues.map(({ id }): Who => ({ kind: "league", leagueId: id })),
  ];
  return (
    <>
      <nav aria-label={t("what.label")}>
        <h2>{t("what.label")}</h2>
        <ChoiceList>
          {whats.map((each) => (
            <ChoiceLink key={each} to={`/papers/${each}`} current={each === what}>
              {whatText(each)}
            </ChoiceLink>
          ))}
        </ChoiceList>
      </nav>
      <nav aria-label={t("who.label")}>
        <h2>{t("who.label")}</h2>
        <ChoiceList>
          {whos.map((each) => (
            <ChoiceLink
              key={nameOf(each)}
              to={`/papers/${what}/${nameOf(each)}`}
              current={nameOf(each) === nameOf(who)}
            >
              {t("who.count", { who: whoText(papers, each), count: chosenOf(papers, each).length })}
            </ChoiceLink>
          ))}
        </ChoiceList>
        <BibRange key={nameOf(who)} what={what} who={who} />
      </nav>
    </>
  );
}

/** Bibs from one number to another. */
function BibRange({ what, who }: Pick<ChoosePapersProps, "what" | "who">) {
  const { t } = useTranslation("papers");
  const [, goTo] = useLocation();
  const isBibs = who.kind === "bibs";
  const [from, setFrom] = useState(isBibs ? String(who.from) : "");
  const [to, setTo] = useState(isBibs ? String(who.to) : "");
  const [isWrong, setWrong] = useState(false);

  function use(): void {
    const isWhole = [from, to].every((text) => /^\d{1,4}$/.test(text.trim()));
    const named = isWhole ? bibsOf(Number(from), Number(to)) : null;
    setWrong(named === null);
    if (named !== null) goTo(`/papers/${what}/${nameOf(named)}`);
  }
  return (
    <div className={css.range} data-current={isBibs}>
      <Row gap={2} align="end">
        <NumberField label={t("range.from")} value={from} maxLength={4} onChange={setFrom} onEnter={use} />
        <NumberField label={t("range.to")} value={to} maxLength={4} onChange={setTo} onEnter={use} />
        <Button onPress={use}>{t("range.use")}</Button>
      </Row>
      {isWrong && <p role="alert">{t("range.wrong", { count: mostBibs })}</p>}
    </div>
  );
}
