import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../../electron/domain/protocols/protocol.ts";
import { useInitials } from "../../../app/initials.tsx";
import { Button, LinkButton } from "../../../parts/Button.tsx";
import { TestMark } from "../../../parts/TestMark.tsx";
import css from "./LiveHead.module.css";
import { useMode } from "./mode.ts";
import { SoundPanel } from "./SoundPanel.tsx";

/** One line over a live station, which has the whole window: what runs here, the sound, who keys, and the ways out. */
export function LiveHead({ test }: { readonly test: TestCode }) {
  const { t } = useTranslation(["live", "common"]);
  const { setMode } = useMode();
  const { initials, change } = useInitials();
  return (
    <header className={css.head}>
      <h1 className={css.title}>
        <TestMark test={test} />
        {t(`common:test.${test}.name`)}
      </h1>
      {test !== "vertical" && <SoundPanel />}
      <div className={css.ways}>
        {initials !== null && (
          <Button onPress={() => void change()}>{t("common:initials.some", { initials })}</Button>
        )}
        <Button hint="Alt+L" onPress={() => setMode("paper")}>
          {t("mode.paper")}
        </Button>
        <LinkButton to="/day">{t("common:back.day")}</LinkButton>
      </div>
    </header>
  );
}
