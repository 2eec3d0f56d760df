import { useId } from "react";
import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { useTRPCClient } from "../../app/client.tsx";
import { saveMade, textFile } from "../../app/saving.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { kinds } from "../../parts/sheets/sheet.ts";
import css from "./Sheets.module.css";

/** Shows the three kinds of sheets, each with an example to fill in. */
export function Examples() {
  const { t } = useTranslation("sheets");
  const client = useTRPCClient();
  const id = useId();
  return (
    <Stack as="section" gap={3} aria-labelledby={id}>
      <h2 id={id}>{t("examples.title")}</h2>
      <ul>
        {kinds.map((kind) => (
          <li key={kind} className={css.kind}>
            <div>
              <h3>{t(`kind.${kind}`)}</h3>
              <p className="quiet">{t(`examples.${kind}`)}</p>
            </div>
            <Button
              label={t("examples.saveOf", { kind: t(`kind.${kind}`) })}
              onPress={() =>
                void saveMade("sheets", () => client.intake.template.query({ kind }).then(textFile))
              }
            >
              {t("examples.save")}
            </Button>
          </li>
        ))}
      </ul>
      <p>
        {t("examples.evening")} <Link href="/rehearsal">{t("examples.rehearse")}</Link>
      </p>
    </Stack>
  );
}
