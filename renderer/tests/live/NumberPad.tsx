import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { BackSign, PadKey } from "../../parts/controls/PadKey.tsx";
import { decimalMark } from "../../words/numbers.ts";
import css from "./NumberPad.module.css";

/** The text that a press on the pad adds; a half with the decimal mark of the language. */
const signs = {
  cm: { half: "5" },
  in: { quarter: " 1/4", half: " 1/2", threeQuarters: " 3/4", feet: "' " },
} as const;

interface NumberPadProps {
  readonly unit: LengthUnit;
  readonly text: string;
  readonly onText: (text: string) => void;
}

/** Keys for fingers: a keyboard's digits, and common fractions. The field keeps the focus. */
export function NumberPad({ unit, text, onText }: NumberPadProps) {
  const { t, i18n } = useTranslation("live");
  const point = decimalMark(i18n.language);
  const parts = Object.entries(signs[unit]) as [keyof (typeof signs)["in"], string][];
  return (
    <fieldset className={css.pad} onPointerDown={(event) => event.preventDefault()}>
      <legend className="unseen">{t("pad.title")}</legend>
      {[7, 8, 9, 4, 5, 6, 1, 2, 3].map((digit) => (
        <PadKey key={digit} label={`${digit}`} onPress={() => onText(`${text}${digit}`)}>
          {digit}
        </PadKey>
      ))}
      <PadKey sign="point" label={t("pad.point")} onPress={() => onText(`${text}${point}`)}>
        {point}
      </PadKey>
      <PadKey sign="0" label="0" onPress={() => onText(`${text}0`)}>
        0
      </PadKey>
      <PadKey sign="back" label={t("pad.back")} onPress={() => onText(text.slice(0, -1))}>
        <BackSign />
      </PadKey>
      <span className={css.parts}>
        {parts.map(([name, sign]) => (
          <PadKey
            key={name}
            label={t(`pad.${name}`)}
            onPress={() => onText(`${text}${unit === "cm" ? point : ""}${sign}`)}
          >
            {{ half: "½", quarter: "¼", threeQuarters: "¾", feet: "ft" }[name]}
          </PadKey>
        ))}
      </span>
    </fieldset>
  );
}
