import { useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import type { Looking } from "../../electron/domain/reference-table/look-up.ts";
import type { PageData } from "../../electron/domain/reference-table/page-data.ts";
import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import { Row, Stack } from "../parts/flow/Stack.tsx";
import { OtherLanguages } from "../parts/frame/LanguageChoice.tsx";
import { Section } from "../parts/layout/Panel.tsx";
import { About } from "./About.tsx";
import { HandInPart } from "./HandIn.tsx";
import texts from "./light/texts.ts";
import css from "./Page.module.css";
import { Sheets } from "./Sheets.tsx";
import { TestResult } from "./TestResult.tsx";
import { useLooking } from "./useLooking.ts";
import { You } from "./You.tsx";

/** The page for everybody: where results stand in a reference table, and what a last result says. */
export function Page({ data }: { readonly data: PageData | null }) {
  const { t, i18n } = useTranslation("page");
  const title = t("title");
  useEffect(() => {
    document.title = title;
    document.documentElement.lang = i18n.language;
  }, [title, i18n.language]);
  return (
    <div className={css.floor}>
      <a className={css.skip} href="#results">
        {t("skip")}
      </a>
      <Stack as="main" gap={6} className={css.sheet}>
        <Row as="header" gap={4} lines={2} align="baseline" wrap between>
          <h1>{title}</h1>
          <OtherLanguages onChoose={(language) => void texts.changeLanguage(language)} />
        </Row>
        <p className="lead measure">{t("lead")}</p>
        {data === null ? <p className="alert">{t("about.empty")}</p> : <WithTable data={data} />}
      </Stack>
    </div>
  );
}

function WithTable({ data }: { readonly data: PageData }) {
  const { t } = useTranslation("page");
  const [who, setWho] = useState<Looking>({ category: null, ageBand: null });
  const [lengths, setLengths] = useState<LengthUnit>("cm");
  const tests = useLooking(data, lengths);
  return (
    <>
      <About data={data} />
      <You who={who} setWho={setWho} lengths={lengths} setLengths={setLengths} />
      <div id="results" tabIndex={-1}>
        <Section title={t("results.title")}>
          <ol className={css.tests}>
            {tests.map((looked) => (
              <TestResult key={looked.test} looked={looked} data={data} who={who} lengths={lengths} />
            ))}
          </ol>
        </Section>
      </div>
      <HandInPart tests={tests} who={who} />
      <Sheets data={data} />
    </>
  );
}
