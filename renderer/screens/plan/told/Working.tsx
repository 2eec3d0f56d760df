import { useTranslation } from "react-i18next";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row, Stack } from "../../../parts/flow/Stack.tsx";
import { Progress } from "../../../parts/layout/Progress.tsx";
import { useSay } from "../../../words/say.ts";
import type { Work } from "../useWork.ts";

interface WorkingProps {
  readonly work: Work;
  readonly label: string;
}

/** Shows how far a calculation is, with the way to stop it; of one that ended without an answer why, and the way to begin again. */
export function Working({ work, label }: WorkingProps) {
  const { t } = useTranslation("plan");
  const say = useSay();
  const { at, done, refusal } = work;
  if (refusal !== null || at === "failed" || at === "stopped") {
    return (
      <Row gap={4} lines={2} align="center" wrap role={at === "stopped" ? "status" : "alert"}>
        <p className={at === "stopped" ? "" : "alert"}>
          {refusal === null ? t(`working.${at === "stopped" ? "stopped" : "failed"}`) : say(refusal)}
        </p>
        <Button onPress={work.begin}>{t("working.again")}</Button>
      </Row>
    );
  }
  return (
    <Stack gap={3}>
      <Progress
        label={label}
        done={at === "running" ? Math.round(done * 100) : null}
        total={100}
        words={at === "running" && t("working.percent", { percent: Math.round(done * 100) })}
      />
      <div>
        <Button onPress={work.stop}>{t("working.stop")}</Button>
      </div>
    </Stack>
  );
}
