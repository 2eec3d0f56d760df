import { useTranslation } from "react-i18next";
import type { Sentence } from "../../../../electron/domain/words.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { useSay } from "../../../words/say.ts";
import css from "./Notice.module.css";

interface QuestionsProps {
  readonly questions: readonly Sentence[];
  readonly onYes: () => void;
  readonly onNo: () => void;
}

/** Asks "Sure?" where the eyes are: Enter is yes, Escape goes back to the field. */
export function Questions({ questions, onYes, onNo }: QuestionsProps) {
  const { t } = useTranslation("station");
  const say = useSay();
  return (
    <div
      className={css.notice}
      role="alert"
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.preventDefault();
        event.stopPropagation();
        onNo();
      }}
    >
      {questions.map((question) => (
        <p key={question.key}>
          <strong className={css.title}>{t("ask.title")}</strong> {say(question)}
        </p>
      ))}
      <Row gap={3} wrap>
        <Button kind="primary" hint="Enter" onPress={onYes} autoFocus>
          {t("ask.yes")}
        </Button>
        <Button hint="Esc" onPress={onNo}>
          {t("ask.no")}
        </Button>
      </Row>
    </div>
  );
}
