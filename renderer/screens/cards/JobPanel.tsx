import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { Progress } from "../../parts/layout/Progress.tsx";
import { type CardJob, cancelCardJob, useCardJob } from "./job.ts";

/** Shows the number of cards laid out, of all, and the button that stops; nothing without a job. */
export function JobPanel() {
  const { t } = useTranslation("cards");
  const job = useCardJob();
  if (job === null || job.progress === null) return null;
  return (
    <Panel>
      <Bar kind={job.kind} progress={job.progress} />
      <p>{t("job.meanwhile")}</p>
      <div>
        <Button onPress={cancelCardJob}>{t("job.cancel")}</Button>
      </div>
    </Panel>
  );
}

/** Draws the progress; writing the file can't be measured, so the bar waits then. */
function Bar({ kind, progress }: { kind: CardJob["kind"]; progress: NonNullable<CardJob["progress"]> }) {
  const { t } = useTranslation("cards");
  const { phase, done, total } = progress;
  const counted = phase === "pages" && total > 0;
  return <Progress label={t(`job.${kind}`)} done={counted ? done : null} total={total} words={words()} />;

  function words(): string {
    if (phase === "file") return t(`job.file.${kind}`, { count: total });
    return total === 0 ? t("job.start") : t("job.cards", { done, count: total });
  }
}
