import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import type { SeriesProps } from "./types.ts";

/** Cancels all readings of one judge, as after the wrong sheet; asks for the reason first. */
export function ClearSeries({ study, series, name }: SeriesProps) {
  const { t } = useTranslation("study");
  const trpc = useTRPC();
  const { ask } = useInitials();
  const [open, setOpen] = useState(false);
  const [tried, setTried] = useState(false);
  const [reason, setReason] = useState("");
  const clearing = useMutation(
    trpc.study.clear.mutationOptions({
      onSuccess({ cancelled }) {
        const values = { count: cancelled, judge: name };
        tell({ tone: "done", sentence: { key: "study:clear.done", values } });
        setOpen(false);
        setReason("");
        setTried(false);
      },
    }),
  );
  async function clear(): Promise<void> {
    setTried(true);
    if (reason.trim() === "") return;
    const by = await ask();
    if (by === null) return;
    clearing.mutate({ studyId: study.study.id, position: series.position, by, reason });
  }
  return (
    <div>
      <Button kind="danger" onPress={() => setOpen(true)}>
        {t("clear.do", { count: series.read, judge: name })}
      </Button>
      {open && (
        <ConfirmDialog
          title={t("clear.title", { judge: name })}
          cancel={t("clear.keep")}
          confirm={t("clear.sure")}
          kind="danger"
          busy={clearing.isPending}
          onConfirm={() => void clear()}
          onClose={() => setOpen(false)}
        >
          <TextField
            label={t("correct.reason")}
            value={reason}
            onChange={setReason}
            error={tried && reason.trim() === "" ? t("correct.reasonEmpty") : null}
            maxLength={200}
            autoFocus
          />
        </ConfirmDialog>
      )}
    </div>
  );
}
