import { useId } from "react";
import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import type { Questions } from "../../app/answers.ts";
import { useTRPCClient } from "../../app/client.tsx";
import { saveMade, textFile } from "../../app/saving.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { kinds } from "../../parts/sheets/sheet.ts";
import css from "./Sheets.module.css";

/** The examples of each kind; a second one shows another form in which leagues send the same. */
const examplesOf = {
  roster: ["roster", "roster-titled"],
  results: ["results"],
  past: ["past", "past-wide"],
} as const;

/** Shows the three kinds of sheets, each with the examples that are sent every day. */
export function Examples() {
  const { t } = useTranslation("sheets");
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
            <Stack gap={2}>
              {examplesOf[kind].map((name) => (
                <SaveExample key={name} name={name} />
              ))}
            </Stack>
          </li>
        ))}
      </ul>
      <p>
        {t("examples.evening")} <Link href="/rehearsal">{t("examples.rehearse")}</Link>
      </p>
    </Stack>
  );
}

function SaveExample({ name }: { readonly name: Questions["intake"]["example"]["name"] }) {
  const { t } = useTranslation("sheets");
  const client = useTRPCClient();
  const form = t(`examples.form.${name}`);
  return (
    <Button
      label={t("examples.saveOf", { form })}
      onPress={() => void saveMade("sheets", () => client.intake.example.query({ name }).then(textFile))}
    >
      {form}
    </Button>
  );
}
