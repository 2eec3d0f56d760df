import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { LeaguesDialog } from "./given/LeaguesDialog.tsx";
import type { Planned } from "./types.ts";

/** Says of a day without anybody on its list how it can be planned all the same. */
export function Nobody({ planned }: { readonly planned: Planned }) {
  const { t } = useTranslation("plan");
  const [saying, setSaying] = useState(false);
  return (
    <EmptyState
      title={t("nobody.title")}
      action={
        <Row gap={3} lines={3} wrap>
          <LinkButton to="/sheets" kind="primary">
            {t("nobody.import")}
          </LinkButton>
          <Button onPress={() => setSaying(true)}>{t("nobody.say")}</Button>
        </Row>
      }
    >
      <p>{t("nobody.what")}</p>
      {saying && <LeaguesDialog planned={planned} onClose={() => setSaying(false)} />}
    </EmptyState>
  );
}
