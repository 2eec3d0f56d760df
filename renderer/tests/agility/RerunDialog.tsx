import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import type { StageProps } from "../live/tool.ts";
import { rerunning } from "./control.ts";
import css from "./Trial.module.css";

const usual = ["slipped", "notHeard", "disturbed"] as const;

/** Asks why a counted trial does not count: it is run again, and stays in the history with the reason. */
export function RerunDialog({ live }: StageProps<"agility">) {
  const { t } = useTranslation("agility");
  const asked = rerunning.use();
  const [reason, setReason] = useState("");
  const [missing, setMissing] = useState(false);
  if (asked === null) return null;

  function close(): void {
    rerunning.set(null);
    setReason("");
    setMissing(false);
  }
  function again(why: string): void {
    if (asked === null) return;
    if (why.trim() === "") {
      setMissing(true);
      return;
    }
    live.tap({
      lane: asked.lane,
      kind: "rerun",
      detail: { direction: asked.direction, reason: why.trim() },
    });
    close();
  }

  return (
    <Dialog
      onClose={close}
      title={t("live.rerun.title", { direction: t(`live.direction.${asked.direction}`).toLowerCase() })}
      actions={
        <>
          <Button onPress={close} hint="Esc">
            {t("live.rerun.no")}
          </Button>
          <Button kind="primary" hint="Enter" onPress={() => again(reason)}>
            {t("live.rerun.yes")}
          </Button>
        </>
      }
    >
      <TextField
        label={t("live.rerun.why")}
        help={t("live.rerun.whyHelp")}
        value={reason}
        onChange={setReason}
        error={missing && reason.trim() === "" ? t("live.rerun.empty") : null}
        maxLength={500}
        onEnter={() => again(reason)}
        autoFocus
      />
      <Row gap={3} align="center" wrap className={css.keys}>
        {usual.map((name) => (
          <Button key={name} onPress={() => again(t(`live.rerun.${name}`))}>
            {t(`live.rerun.${name}`)}
          </Button>
        ))}
      </Row>
    </Dialog>
  );
}
