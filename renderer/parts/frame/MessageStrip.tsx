import { useTranslation } from "react-i18next";
import { type Message, tell, useMessage } from "../../app/messages.ts";
import { useSay } from "../../words/say.ts";
import { Button } from "../controls/Button.tsx";
import css from "./MessageStrip.module.css";

const signs: Record<Message["tone"], string> = {
  done: "m5 12.5 5 5L19.5 6",
  note: "M12 10v9M12 4.5v2",
  alert: "M12 4v10M12 17.5v2",
};

/** The one place for messages. The live region stays in the page, so that each new message is read out politely. */
export function MessageStrip() {
  const { t } = useTranslation("common");
  const say = useSay();
  const message = useMessage();
  return (
    <div className={css.strip} data-tone={message?.tone ?? "none"}>
      <div className={css.words} role="status">
        {message !== null && (
          <>
            <svg className={css.sign} viewBox="0 0 24 24" aria-hidden="true">
              <path d={signs[message.tone]} />
            </svg>
            {say(message.sentence)}
          </>
        )}
      </div>
      {message?.action !== undefined && (
        <Button onPress={message.action.act}>{say(message.action.label)}</Button>
      )}
      {message !== null && (
        <Button label={t("message.close")} keepsFocus onPress={() => tell(null)}>
          <svg className={css.cross} viewBox="0 0 16 16" aria-hidden="true">
            <path d="m2 2 12 12M14 2 2 14" />
          </svg>
        </Button>
      )}
    </div>
  );
}
