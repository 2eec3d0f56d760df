import { useTranslation } from "react-i18next";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { useSay } from "../../../words/say.ts";
import css from "./Notice.module.css";
import { Questions } from "./Questions.tsx";
import type { Sending } from "./useSend.ts";

interface SendTroubleProps {
  readonly sending: Sending;
  /** Sends the same entry again; `sure` after a yes. */
  readonly onSend: (sure: boolean) => void;
  readonly onNo: () => void;
}

/** Shows what keeps an entry from being saved: a question, a refusal, or no answer. */
export function SendTrouble({ sending, onSend, onNo }: SendTroubleProps) {
  const { t } = useTranslation("station");
  const say = useSay();
  if (sending.state === "asked") {
    return <Questions questions={sending.questions} onYes={() => onSend(true)} onNo={onNo} />;
  }
  if (sending.state !== "refused") return null;
  return (
    <div className={css.notice} role="alert">
      <p>{say(sending.sentence)}</p>
      {sending.again && (
        <Row gap={3} wrap>
          <Button kind="primary" hint="Enter" onPress={() => onSend(false)} autoFocus>
            {t("entry.again")}
          </Button>
        </Row>
      )}
    </div>
  );
}
