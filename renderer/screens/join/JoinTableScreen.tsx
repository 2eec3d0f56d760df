import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Screen } from "../../parts/layout/Screen.tsx";
import { AskTableForm } from "./AskTableForm.tsx";
import css from "./Join.module.css";
import { useAnswer } from "./useAnswer.ts";
import { Waiting } from "./Waiting.tsx";

/** Where this laptop becomes a device of another laptop's table: what that one shows, and the wait for its yes. */
export function JoinTableScreen() {
  const { t } = useTranslation("atTable");
  const [asking, setAsking] = useState<{ readonly ask: string; readonly name: string } | null>(null);
  const [refused, setRefused] = useState<"no" | "gone" | null>(null);
  useAnswer(asking?.ask ?? null, (state) => {
    setAsking(null);
    setRefused(state);
  });
  return (
    <Screen title={t("title")} lead={t("lead")} ready>
      <div className={css.table}>
        {asking === null ? (
          <AskTableForm refused={refused} onAsked={(ask, name) => setAsking({ ask, name })} />
        ) : (
          <Waiting name={asking.name} />
        )}
      </div>
    </Screen>
  );
}
