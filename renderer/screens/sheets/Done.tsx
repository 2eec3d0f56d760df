import { useTranslation } from "react-i18next";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { changesOf, type Taken } from "../../parts/sheets/sheet.ts";
import { writeNumber } from "../../words/numbers.ts";
import { KeptBack } from "./KeptBack.tsx";
import css from "./Sheets.module.css";
import type { SheetInHand } from "./useSheet.ts";

/** Says what was imported and what was not, and offers the next steps. */
export function Done({ taken, sheet }: { readonly taken: Taken; readonly sheet: SheetInHand }) {
  const { t, i18n } = useTranslation("sheets");
  const { counts, kind } = taken;
  const count = changesOf(counts);
  return (
    <>
      <Panel>
        <h2 className={css.title}>{t("done.title", { count, shown: writeNumber(count, i18n.language) })}</h2>
        <p>{t(`done.${kind}`)}</p>
        <Row gap={3} wrap>
          <Button kind="primary" autoFocus onPress={sheet.putAway}>
            {t("done.next")}
          </Button>
          <LinkButton to={kind === "roster" ? "/check-in" : "/day"}>
            {kind === "roster" ? t("done.checkIn") : t("done.day")}
          </LinkButton>
        </Row>
      </Panel>
      {counts.keptBack > 0 && (
        <KeptBack rows={taken.keptBack} count={counts.keptBack} others="areIn" sheet={sheet} />
      )}
    </>
  );
}
