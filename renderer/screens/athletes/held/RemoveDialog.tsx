import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import { Button } from "../../../parts/Button.tsx";
import { Dialog } from "../../../parts/Dialog.tsx";
import type { Who } from "./types.ts";

/** Takes out somebody typed by mistake. */
export function RemoveDialog({ athlete, onClose }: { readonly athlete: Who; readonly onClose: () => void }) {
  const { t } = useTranslation("held");
  const trpc = useTRPC();
  const [, go] = useLocation();
  const remove = useMutation(
    trpc.people.remove.mutationOptions({
      onSuccess() {
        tell({ tone: "done", sentence: { key: "held:remove.done" } });
        go("/athletes");
      },
      onError: onClose,
    }),
  );
  return (
    <Dialog
      open
      kind="question"
      onClose={onClose}
      title={t("remove.title", { name: athlete.name })}
      actions={
        <>
          <Button onPress={onClose}>{t("remove.cancel")}</Button>
          <Button
            kind="danger"
            autoFocus
            busy={remove.isPending}
            onPress={() => remove.mutate({ athleteId: athlete.athleteId })}
          >
            {t("remove.sure")}
          </Button>
        </>
      }
    >
      <p>{t("remove.what")}</p>
    </Dialog>
  );
}
