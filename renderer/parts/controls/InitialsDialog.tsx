import { useState } from "react";
import { useTranslation } from "react-i18next";
import { isDevice } from "../../app/table.ts";
import { Button } from "./Button.tsx";
import { Dialog } from "./Dialog.tsx";
import { TextField } from "./TextField.tsx";

/** Asks for the initials of the person at this window. */
export function InitialsDialog({ onAnswer }: { readonly onAnswer: (initials: string | null) => void }) {
  const { t } = useTranslation("common");
  const [typed, setTyped] = useState("");
  const [refused, setRefused] = useState(false);
  const given = typed.trim().toUpperCase();
  const isGood = /^\p{L}{1,4}$/u.test(given);

  function submit(): void {
    if (isGood) onAnswer(given);
    else setRefused(true);
  }
  return (
    <Dialog
      onClose={() => onAnswer(null)}
      title={t(isDevice ? "initials.titleDevice" : "initials.title")}
      actions={
        <>
          <Button onPress={() => onAnswer(null)}>{t("initials.cancel")}</Button>
          <Button kind="primary" onPress={submit}>
            {t("initials.keep")}
          </Button>
        </>
      }
    >
      <p>{t("initials.why")}</p>
      <TextField
        label={t("initials.label")}
        value={typed}
        onChange={setTyped}
        error={refused && !isGood ? t("initials.empty") : null}
        maxLength={4}
        autoFocus
        onEnter={submit}
      />
    </Dialog>
  );
}
