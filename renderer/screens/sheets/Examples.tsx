import { useId } from "react";
import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { useTRPCClient } from "../../app/client.tsx";
import { Button } from "../../parts/Button.tsx";
import css from "./Examples.module.css";
import { saveText } from "./save.ts";
import { kinds } from "./sheet.ts";

/** The three kinds of sheets, each with an example to fill in. */
export function Examples() {
  const { t } = useTranslation("sheets");
  const client = useTRPCClient();
  const id = useId();
  return (
    <section className={css.examples} aria-labelledby={id}>
      <h2 id={id}>{t("examples.title")}</h2>
      <ul className={css.list}>
        {kinds.map((kind) => (
          <li key={kind} className={css.kind}>
            <div>
              <h3>{t(`kind.${kind}`)}</h3>
              <p className={css.what}>{t(`examples.${kind}`)}</p>
            </div>
            <Button
              label={t("examples.saveOf", { kind: t(`kind.${kind}`) })}
              onPress={() => void saveText(client.intake.template.query({ kind }))}
            >
              {t("examples.save")}
            </Button>
          </li>
        ))}
      </ul>
      <p className={css.rehearse}>
        {t("examples.evening")} <Link href="/rehearsal">{t("examples.rehearse")}</Link>
      </p>
    </section>
  );
}
