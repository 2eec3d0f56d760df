import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { kinds } from "../../parts/sheets/sheet.ts";
import css from "./Sheets.module.css";
import { isAboutTheDay, type SheetInHand } from "./useSheet.ts";

/** Shows the current file, the kind it is read as, and the button to choose another. */
export function SheetHead({ sheet }: { readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  const heading = useRef<HTMLHeadingElement>(null);
  const { standing, name, kind } = sheet;
  const isPreview = standing.step === "preview";
  const mayBeAnother = isPreview || (standing.step === "refused" && isAboutTheDay(standing.sentence));

  // The pressed button is gone; the keyboard goes on from here, and the file is read out.
  useEffect(() => heading.current?.focus(), []);

  return (
    <div className={css.head}>
      <h2 ref={heading} tabIndex={-1} className={css.name}>
        {name}
      </h2>
      {mayBeAnother && (
        <Row gap={3} lines={2} align="center" wrap className="strong">
          <span aria-hidden="true">{t("readAs")}</span>
          <Choice
            label={t("readAs")}
            hideLabel
            options={kinds.map((each) => ({ value: each, label: t(`kind.${each}`) }))}
            value={kind ?? (isPreview ? standing.preview.kind : null)}
            onChange={sheet.readAs}
          />
        </Row>
      )}
      {isPreview && <Button onPress={sheet.putAway}>{t("another")}</Button>}
    </div>
  );
}
