import { type ReactNode, useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import { useReady } from "../../app/ready.ts";
import { Row } from "../../parts/flow/Stack.tsx";
import { OwnLanguageChoice } from "../../parts/frame/LanguageChoice.tsx";
import { AskForm } from "./AskForm.tsx";
import css from "./Join.module.css";
import { useAnswer } from "./useAnswer.ts";
import { Waiting } from "./Waiting.tsx";

/** Where a phone, a tablet or a television joins the table: the code, its name, and the wait for the organiser's yes. */
export function JoinScreen({ left }: { readonly left: ReactNode }) {
  const { t } = useTranslation(["join", "common"]);
  const [asking, setAsking] = useState<{ readonly ask: string; readonly name: string } | null>(null);
  const [refused, setRefused] = useState<"no" | "gone" | null>(null);
  useReady(true);
  useEffect(() => {
    document.title = t("title");
  }, [t]);
  useAnswer(asking?.ask ?? null, (state) => {
    setAsking(null);
    setRefused(state);
  });
  return (
    <main className={css.page}>
      <Row gap={2} align="center" wrap between>
        <p className={`figures ${css.print}`}>{t("common:name")}</p>
        <OwnLanguageChoice />
      </Row>
      <h1>{t("title")}</h1>
      {asking === null ? (
        <AskForm refused={refused} onAsked={(ask, name) => setAsking({ ask, name })} />
      ) : (
        <Waiting name={asking.name} />
      )}
      {left}
    </main>
  );
}
