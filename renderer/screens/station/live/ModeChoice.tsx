import { useTranslation } from "react-i18next";
import { useKeys } from "../../../app/keys.ts";
import { Choice } from "../../../parts/controls/Choice.tsx";
import { KeyHint } from "../../../parts/controls/KeyHint.tsx";
import css from "./ModeChoice.module.css";
import type { Mode } from "./mode.ts";

interface ModeChoiceProps {
  readonly mode: Mode;
  readonly setMode: (mode: Mode) => void;
}

/** Chooses whether the test is run here, or keyed from paper. */
export function ModeChoice({ mode, setMode }: ModeChoiceProps) {
  const { t } = useTranslation("live");
  useKeys({ "Alt+L": () => setMode(mode === "live" ? "paper" : "live") });
  const options = (["live", "paper"] as const).map((value) => ({ value, label: t(`mode.${value}`) }));
  return (
    <div className={css.mode}>
      <Choice label={t("mode.label")} hideLabel options={options} value={mode} onChange={setMode} />
      <KeyHint keys="Alt+L" />
    </div>
  );
}
