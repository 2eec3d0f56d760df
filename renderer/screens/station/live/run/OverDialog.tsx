import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../../app/client.tsx";
import { useInitials } from "../../../../app/initials.tsx";
import { Button } from "../../../../parts/controls/Button.tsx";
import { Dialog } from "../../../../parts/controls/Dialog.tsx";
import { TextField } from "../../../../parts/controls/TextField.tsx";
import { Row } from "../../../../parts/flow/Stack.tsx";
import type { Live } from "../../../../tests/live/tool.ts";
import css from "./OverDialog.module.css";

interface OverDialogProps {
  readonly live: Live;
  readonly onClose: () => void;
}

/** Ends a heat as it is, with unfinished athletes set aside; or cancels it, with a reason, to run it again. */
export function OverDialog({ live, onClose }: OverDialogProps) {
  const { t } = useTranslation("live");
  const trpc = useTRPC();
  const { ask } = useInitials();
  const end = useMutation(trpc.heat.end.mutationOptions({ onSuccess: onClose }));
  const callOff = useMutation(trpc.heat.callOff.mutationOptions({ onSuccess: onClose }));
  const [reason, setReason] = useState("");
  const [missing, setMissing] = useState(false);
  const { heatId } = live.heat;
  const open = live.lanes.filter(({ state }) => state.phase === "going" || state.phase === "ready");

  async function endIt(): Promise<void> {
    const by = await ask();
    if (by !== null) end.mutate({ heatId, by, setAside: true });
  }
  async function callItOff(again: boolean): Promise<void> {
    if (reason.trim() === "") return setMissing(true);
    const by = await ask();
    if (by !== null) callOff.mutate({ heatId, by, reason, ...(again && { again: crypto.randomUUID() }) });
  }

  return (
    <Dialog onClose={onClose} title={t("over.title")}>
      <p>
        {open.length === 0
          ? t("over.allDone")
          : t("over.open", { count: open.length, lanes: open.map(({ lane }) => lane).join(", ") })}
      </p>
      <Row gap={3} wrap className={css.acts}>
        <Button kind={open.length === 0 ? "primary" : "quiet"} autoFocus onPress={() => void endIt()}>
          {t(open.length === 0 ? "over.end" : "over.setAside")}
        </Button>
        <Button hint="Esc" onPress={onClose}>
          {t("over.go")}
        </Button>
      </Row>
      <TextField
        label={t("over.why")}
        help={t("over.whyHelp")}
        value={reason}
        onChange={setReason}
        error={missing && reason.trim() === "" ? t("over.whyEmpty") : null}
        maxLength={500}
      />
      <Row gap={3} wrap className={css.acts}>
        <Button kind="danger" onPress={() => void callItOff(true)}>
          {t("over.again")}
        </Button>
        <Button kind="danger" onPress={() => void callItOff(false)}>
          {t("over.callOff")}
        </Button>
      </Row>
    </Dialog>
  );
}
