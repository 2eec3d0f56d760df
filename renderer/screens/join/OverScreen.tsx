import { type ReactNode, useEffect } from "react";
import { useTranslation } from "react-i18next";
import { leaveTable, type Membership } from "../../app/membership.ts";
import { useReady } from "../../app/ready.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import css from "./Join.module.css";

interface OverScreenProps {
  readonly membership: Membership;
  /** What the table never had of what was entered here; null for nothing. */
  readonly left: ReactNode;
}

/** What a joined laptop shows once it is no device of the table any more, and the way back to its own first screen. */
export function OverScreen({ membership, left }: OverScreenProps) {
  const { t } = useTranslation(["atTable", "common"]);
  useReady(true);
  useEffect(() => {
    document.title = t("over.title");
  }, [t]);
  return (
    <main className={css.page}>
      <p className={`figures ${css.print}`}>{t("common:name")}</p>
      <h1>{t("over.title")}</h1>
      <Stack gap={3} className={css.waiting}>
        <p className="lead">{t(membership.is === "over" ? `over.${membership.why}` : "over.unknown")}</p>
        {left === null && <p>{t("over.kept")}</p>}
      </Stack>
      {left}
      <div>
        <Button kind="primary" size="large" autoFocus onPress={() => void leaveTable()}>
          {t("over.do")}
        </Button>
      </div>
    </main>
  );
}
