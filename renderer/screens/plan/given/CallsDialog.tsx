import { useState } from "react";
import { useTranslation } from "react-i18next";
import { planMost } from "../../../../electron/domain/plan/settings.ts";
import { Check } from "../../../parts/controls/Check.tsx";
import { NumberField } from "../../../parts/controls/NumberField.tsx";
import type { Planned } from "../types.ts";
import { SettingsDialog } from "./SettingsDialog.tsx";
import { readCount } from "./typed.ts";
import { useSavePlan } from "./useSavePlan.ts";

interface CallsDialogProps {
  readonly planned: Planned;
  readonly onClose: () => void;
}

/** Asks how many judges there are, whether the three tests in the middle may change places, and the bound for calls. */
export function CallsDialog({ planned, onClose }: CallsDialogProps) {
  const { t } = useTranslation("plan");
  const [judges, setJudges] = useState(planned.judges === null ? "" : String(planned.judges));
  const [bound, setBound] = useState(String(planned.boundMinutes));
  const [isFree, setFree] = useState(planned.middleIsFree);
  const [tried, setTried] = useState(false);
  const saving = useSavePlan(planned, onClose);
  const counted = judges.trim() === "" ? null : readCount(judges, 1, planMost.judges);
  const isJudgesBad = counted === null && judges.trim() !== "";
  const boundMinutes = readCount(bound, 0, planMost.boundMinutes);

  function send(): void {
    setTried(true);
    if (isJudgesBad || boundMinutes === null) return;
    saving.save({ judges: counted, boundMinutes, middleIsFree: isFree });
  }
  return (
    <SettingsDialog title={t("calls.title")} saving={saving} onSave={send} onClose={onClose}>
      <NumberField
        label={t("calls.judges")}
        help={t("calls.judgesHelp")}
        value={judges}
        onChange={setJudges}
        maxLength={2}
        autoFocus
        error={tried && isJudgesBad ? t("given.notCount", { least: 1, most: planMost.judges }) : null}
      />
      <Check checked={isFree} onChange={setFree}>
        {t("calls.middle")}
      </Check>
      <NumberField
        label={t("calls.bound")}
        help={t("calls.boundHelp")}
        value={bound}
        onChange={setBound}
        maxLength={2}
        error={
          tried && boundMinutes === null
            ? t("given.notCount", { least: 0, most: planMost.boundMinutes })
            : null
        }
      />
    </SettingsDialog>
  );
}
