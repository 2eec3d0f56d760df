import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { tell } from "../../app/messages.ts";
import { useStanding } from "../../app/standing.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { PinWait } from "../../parts/controls/PinWait.tsx";
import { useWait } from "../../parts/controls/pinTries.ts";
import { TextField } from "../../parts/controls/TextField.tsx";

interface ReopenDayProps {
  readonly day: { readonly id: number; readonly title: string };
}

/** Opens a closed day again, for papers that came late. */
export function ReopenDay({ day }: ReopenDayProps) {
  const { t } = useTranslation("planning");
  const [asking, setAsking] = useState(false);
  return (
    <>
      <Button label={t("reopen.which", { title: day.title })} onPress={() => setAsking(true)}>
        {t("reopen.action")}
      </Button>
      {asking && <ReopenDialog day={day} onClose={() => setAsking(false)} />}
    </>
  );
}

/** Asks for the reason, and for the PIN where there is one. */
function ReopenDialog({ day, onClose }: ReopenDayProps & { readonly onClose: () => void }) {
  const { t } = useTranslation("planning");
  const { pinSet, waitMs } = useStanding();
  const { ask } = useInitials();
  const { seconds, begin } = useWait(waitMs);
  const [reason, setReason] = useState("");
  const [pin, setPin] = useState("");
  const [pinError, setPinError] = useState<string | null>(null);
  const [tried, setTried] = useState(false);
  // One id for all tries: a retry leaves one line in the day's history.
  const [id] = useState(() => crypto.randomUUID());
  const reopen = useReopen(onClose, (outcome, wait) => {
    begin(wait);
    setPin("");
    setPinError(t(outcome === "wrong" ? "reopen.wrong" : "reopen.tooSoon"));
  });

  async function send(): Promise<void> {
    setTried(true);
    if (reason.trim() === "" || (pinSet && pin === "") || seconds > 0) return;
    const by = await ask();
    if (by !== null) reopen.mutate({ dayId: day.id, id, by, reason, pin });
  }
  return (
    <ConfirmDialog
      title={t("reopen.title", { title: day.title })}
      cancel={t("reopen.keep")}
      confirm={t("reopen.action")}
      kind="primary"
      busy={reopen.isPending}
      onConfirm={() => void send()}
      onClose={onClose}
    >
      <p>{t("reopen.what")}</p>
      <TextField
        label={t("reopen.reason")}
        value={reason}
        onChange={setReason}
        error={tried && reason.trim() === "" ? t("reopen.reasonEmpty") : null}
        maxLength={200}
        autoFocus
        onEnter={() => void send()}
      />
      {pinSet && (
        <TextField
          label={t("reopen.pin")}
          type="password"
          inputMode="numeric"
          value={pin}
          onChange={setPin}
          error={tried && pin === "" ? (pinError ?? t("reopen.pinEmpty")) : null}
          maxLength={64}
          onEnter={() => void send()}
        />
      )}
      <PinWait seconds={seconds} />
    </ConfirmDialog>
  );
}

/** Sends the request, and goes to the day once it is open again. */
function useReopen(onDone: () => void, onRefused: (outcome: "wrong" | "wait", waitMs: number) => void) {
  const trpc = useTRPC();
  const [, go] = useLocation();
  return useMutation(
    trpc.day.reopen.mutationOptions({
      async onSuccess(tried) {
        if (tried.outcome !== "right") return onRefused(tried.outcome, tried.waitMs);
        tell({ tone: "done", sentence: { key: "planning:reopen.done" }, follows: "once" });
        await queryClient.invalidateQueries(trpc.day.current.queryFilter());
        onDone();
        go("/day");
      },
    }),
  );
}
