import type { Ref } from "react";
import { useTranslation } from "react-i18next";
import { NumberField } from "../../../../parts/controls/NumberField.tsx";
import css from "./Gather.module.css";

interface BibBoxProps {
  readonly bib: string;
  readonly setBib: (typed: string) => void;
  readonly onPlace: () => void;
  readonly inputRef: Ref<HTMLInputElement>;
}

/** Takes digits typed before the start, whatever has the focus, for an athlete who is not next in turn. */
export function BibBox({ bib, setBib, onPlace, inputRef }: BibBoxProps) {
  const { t } = useTranslation("live");
  return (
    <div className={css.bibBox}>
      <NumberField
        label={t("gather.bib")}
        value={bib}
        onChange={setBib}
        onEnter={onPlace}
        inputRef={inputRef}
        maxLength={6}
      />
    </div>
  );
}
