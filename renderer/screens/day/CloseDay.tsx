import { useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Missing } from "./Missing.tsx";

/** Closes the day, after saying what is missing. */
export function CloseDay({ dayId }: { readonly dayId: number }) {
  const { t } = useTranslation("day");
  const [asking, setAsking] = useState(false);
  return (
    <>
      <Button onPress={() => setAsking(true)}>{t("close.action")}</Button>
      {asking && <CloseDialog dayId={dayId} onClose={() => setAsking(false)} />}
    </>
  );
}

function CloseDialog({ dayId, onClose }: { readonly dayId: number; readonly onClose: () => void }) {
  const { t } = useTranslation(["day", "planning"]);
  const trpc = useTRPC();
  const missing = useQuery(trpc.day.beforeClosing.queryOptions());
  const close = useMutation(
    trpc.day.close.mutationOptions({
      onSuccess: () => tell({ tone: "done", sentence: { key: "day:close.done" }, follows: "once" }),
      onSettled: onClose,
    }),
  );
  return (
    <ConfirmDialog
      title={t("day:close.title")}
      cancel={t("day:close.keep")}
      confirm={t("day:close.action")}
      busy={close.isPending}
      onConfirm={() => close.mutate({ dayId })}
      onClose={onClose}
    >
      <Answer query={missing}>{(told) => <Missing told={told} onGo={onClose} />}</Answer>
      <p>{t("day:close.what")}</p>
      <p>{t("planning:closing.late")}</p>
    </ConfirmDialog>
  );
}
