import { useTranslation } from "react-i18next";
import type { Sentence } from "../../../electron/domain/words.ts";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { useSay } from "../../words/say.ts";
import css from "./Sheets.module.css";
import { isAboutTheDay, type SheetInHand } from "./useSheet.ts";

/** Says why the whole sheet can't be imported, and offers the next steps. Nothing was changed. */
export function Refused({ sentence, sheet }: { readonly sentence: Sentence; readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  const say = useSay();
  const needsDay = isAboutTheDay(sentence);
  return (
    <Panel tone="alert">
      <Stack role="alert" gap={2}>
        <p className={`lead strong measure ${css.why}`}>{say(sentence)}</p>
        <p>{t("refused.nothing")}</p>
      </Stack>
      <Row gap={3} wrap>
        {needsDay && (
          <LinkButton to="/" kind="primary">
            {t("refused.start")}
          </LinkButton>
        )}
        <Button kind={needsDay ? "quiet" : "primary"} onPress={sheet.putAway}>
          {t("another")}
        </Button>
        {needsDay && sheet.uploadId !== null && (
          <Button onPress={sheet.readAgain}>{t("refused.again")}</Button>
        )}
      </Row>
    </Panel>
  );
}
