import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import { useKeys } from "../app/keys.ts";
import { Choice } from "../parts/controls/Choice.tsx";
import { KeyHint } from "../parts/controls/KeyHint.tsx";
import { Row } from "../parts/flow/Stack.tsx";
import css from "./Choice.module.css";

interface LengthsChoiceProps {
  readonly lengths: LengthUnit;
  readonly setLengths: (lengths: LengthUnit) => void;
}

/** Chooses the unit of the tape on the wall: centimetres or inches. */
export function LengthsChoice({ lengths, setLengths }: LengthsChoiceProps) {
  const { t } = useTranslation(["station", "common"]);
  useKeys({ "Alt+I": () => setLengths(lengths === "cm" ? "in" : "cm") });
  const options = (["cm", "in"] as const).map((unit) => ({ value: unit, label: t(`common:unit.${unit}`) }));
  return (
    <Row gap={3} align="end" wrap className={css.choice}>
      <Choice label={t("entry.units")} hideLabel options={options} value={lengths} onChange={setLengths} />
      <KeyHint keys="Alt+I" does={t("choice.changes")} />
    </Row>
  );
}
