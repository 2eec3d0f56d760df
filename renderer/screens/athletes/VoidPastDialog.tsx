import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { useSay } from "../../words/say.ts";
import type { PastResult } from "./types.ts";

interface VoidPastDialogProps {
  readonly athleteId: number;
  readonly mark: PastResult;
  /** The result in words. */
  readonly what: string;
  readonly onClose: () => void;
}

/** Asks for the right value and the reason; or for the reason alone, to remove the result. */
export function VoidPastDialog({ athleteId, mark, what, onClose }: VoidPastDialogProps) {
  const { t } = useTranslation("planning");
  const say = useSay();
  const trpc = useTRPC();
  const { ask } = useInitials();
  const [instead, setInstead] = useState("");
  const [reason, setReason] = useState("");
  const [tried, setTried] = useState<"correct" | "remove" | null>(null);
  const [question, setQuestion] = useState<Sentence | null>(null);
  // One id for all tries: a retry removes nothing twice.
  const [id] = useState(() => crypto.randomUUID());
  const send = useMutation(
    trpc.people.voidPast.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess(answer) {
        if (answer.outcome === "ask") return setQuestion(answer.question);
        tell({ tone: "done", sentence: { key: "planning:past.done" } });
        onClose();
      },
    }),
  );

  async function submit(way: "correct" | "remove", sure = false): Promise<void> {
    setTried(way);
    if (reason.trim() === "" || (way === "correct" && instead.trim() === "")) return;
    const by = await ask();
    if (by === null) return;
    const { test, variant, fingerprint, date, value } = mark;
    const which = { id, athleteId, test, variant, fingerprint, date, value };
    send.mutate({ ...which, instead: way === "correct" ? instead : null, reason, by, sure });
  }
  const refused = send.isError ? say(sentenceOf(send.error)) : null;
  return (
    <ConfirmDialog
      title={t("past.dialog")}
      cancel={t("changing.cancel")}
      between={
        <Button kind="danger" busy={send.isPending} onPress={() => void submit("remove")}>
          {t("past.remove")}
        </Button>
      }
      confirm={question === null ? t("past.correct") : t("past.sure")}
      kind="primary"
      busy={send.isPending}
      onConfirm={() => void submit("correct", question !== null)}
      onClose={onClose}
    >
      <p className="strong">{what}</p>
      <TextField
        label={t("past.instead")}
        help={t("past.insteadHelp")}
        value={instead}
        onChange={(typed) => {
          setInstead(typed);
          setQuestion(null);
        }}
        error={tried === "correct" && instead.trim() === "" ? t("past.insteadEmpty") : refused}
        maxLength={40}
        autoFocus
      />
      <TextField
        label={t("past.reason")}
        value={reason}
        onChange={setReason}
        error={tried !== null && reason.trim() === "" ? t("reopen.reasonEmpty") : null}
        maxLength={200}
      />
      {question !== null && <p role="alert">{say(question)}</p>}
    </ConfirmDialog>
  );
}
