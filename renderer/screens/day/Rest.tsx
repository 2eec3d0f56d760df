import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { leastRestMinutes, mostRestMinutes } from "../../../electron/domain/queue/rest.ts";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { NumberField } from "../../parts/controls/NumberField.tsx";
import css from "./Rules.module.css";

/** Sets the minutes of rest between two tests, at any time, since no mark depends on it. */
export function Rest({ minutes }: { readonly minutes: number }) {
  const { t } = useTranslation("day");
  const [changing, setChanging] = useState(false);
  return (
    <li className={css.rule}>
      <strong>{t("rules.rest.title")}</strong>
      <span>{t("rules.rest.summary", { count: minutes })}</span>
      <span />
      <Button label={t("rules.rest.changeWhich")} onPress={() => setChanging(true)}>
        {t("rules.change")}
      </Button>
      {changing && <RestDialog minutes={minutes} onClose={() => setChanging(false)} />}
    </li>
  );
}

function RestDialog({ minutes, onClose }: { readonly minutes: number; readonly onClose: () => void }) {
  const { t } = useTranslation("day");
  const trpc = useTRPC();
  const [typed, setTyped] = useState(String(minutes));
  const [tried, setTried] = useState(false);
  const keep = useMutation(
    trpc.day.setRest.mutationOptions({
      onSuccess() {
        tell({ tone: "done", sentence: { key: "day:rules.restKept" } });
        onClose();
      },
    }),
  );
  const isGood =
    /^\d{1,2}$/.test(typed.trim()) && Number(typed) >= leastRestMinutes && Number(typed) <= mostRestMinutes;

  function send(): void {
    setTried(true);
    if (isGood) keep.mutate({ restMinutes: Number(typed) });
  }
  return (
    <ConfirmDialog
      title={t("rules.rest.title")}
      cancel={t("rules.cancel")}
      confirm={t("rules.keep")}
      kind="primary"
      busy={keep.isPending}
      onConfirm={send}
      onClose={onClose}
    >
      <NumberField
        label={t("rules.rest.label")}
        value={typed}
        onChange={setTyped}
        onEnter={send}
        autoFocus
        maxLength={2}
        error={
          tried && !isGood ? t("rules.rest.bad", { least: leastRestMinutes, most: mostRestMinutes }) : null
        }
      />
    </ConfirmDialog>
  );
}
