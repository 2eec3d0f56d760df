import { type ReactNode, useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import { useReady } from "../../app/ready.ts";
import { AskForm } from "./AskForm.tsx";
import { hearAnswer } from "./asking.ts";
import css from "./Join.module.css";

/** How often the table's answer is asked for, in ms. */
const everyMs = 1_000;

/** Where a phone, a tablet or a television joins the table: the code, its name, and the wait for the organiser's yes. */
export function JoinScreen({ left }: { readonly left: ReactNode }) {
  const { t } = useTranslation(["join", "common"]);
  const [ask, setAsk] = useState<string | null>(null);
  const [refused, setRefused] = useState<"no" | "gone" | null>(null);
  useReady(true);
  useEffect(() => {
    document.title = t("title");
  }, [t]);
  useAnswer(ask, (state) => {
    setAsk(null);
    setRefused(state);
  });
  return (
    <main className={css.page}>
      <p className={css.print}>{t("common:name")}</p>
      <h1>{t("title")}</h1>
      {ask === null ? <AskForm refused={refused} onAsked={setAsk} /> : <Waiting />}
      {left}
    </main>
  );
}

function Waiting() {
  const { t } = useTranslation("join");
  return (
    <div className={css.waiting} role="status">
      <p className="lead">{t("waiting.title")}</p>
      <p>{t("waiting.what")}</p>
    </div>
  );
}

/** Asks for the answer until there is one; a yes leads to this device's place. */
function useAnswer(ask: string | null, onRefused: (state: "no" | "gone") => void): void {
  useEffect(() => {
    if (ask === null) return;
    let over = false;
    async function look(secret: string): Promise<void> {
      const state = await hearAnswer(secret);
      if (over) return;
      if (state === "yes") location.replace("/");
      else if (state === "no" || state === "gone") onRefused(state);
      else setTimeout(() => void look(secret), everyMs);
    }
    void look(ask);
    return () => {
      over = true;
    };
  }, [ask, onRefused]);
}
