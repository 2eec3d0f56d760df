import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import { ConfirmDialog } from "../../../parts/controls/ConfirmDialog.tsx";
import type { HeldAthlete } from "./types.ts";

/** Removes somebody who was entered by mistake. */
export function RemoveDialog({
  athlete,
  onClose,
}: {
  readonly athlete: HeldAthlete;
  readonly onClose: () => void;
}) {
  const { t } = useTranslation("held");
  const trpc = useTRPC();
  const [, go] = useLocation();
  const remove = useMutation(
    trpc.people.remove.mutationOptions({
      onSuccess() {
        tell({ tone: "done", sentence: { key: "held:remove.done" }, follows: "once" });
        go("/athletes");
      },
      onError: onClose,
    }),
  );
  return (
    <ConfirmDialog
      title={t("remove.title", { name: athlete.name })}
      cancel={t("remove.cancel")}
      confirm={t("remove.sure")}
      autoFocus
      busy={remove.isPending}
      onConfirm={() => remove.mutate({ athleteId: athlete.athleteId })}
      onClose={onClose}
    >
      <p>{t("remove.what")}</p>
    </ConfirmDialog>
  );
}
