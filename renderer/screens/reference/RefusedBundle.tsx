import { useTranslation } from "react-i18next";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useSay } from "../../app/say.ts";
import { Button } from "../../parts/Button.tsx";
import { Panel } from "../../parts/Panel.tsx";

interface RefusedProps {
  readonly name: string;
  readonly sentence: Sentence;
  readonly onDone: () => void;
}

/** Why a file is not taken. Nothing of it is kept. */
export function RefusedBundle({ name, sentence, onDone }: RefusedProps) {
  const { t } = useTranslation("reference");
  const say = useSay();
  return (
    <Panel tone="alert" title={name}>
      <div role="alert">
        <p>{say(sentence)}</p>
        <p>{t("refused.nothing")}</p>
      </div>
      <div>
        <Button kind="primary" autoFocus onPress={onDone}>
          {t("refused.another")}
        </Button>
      </div>
    </Panel>
  );
}
