import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useStanding } from "../../app/standing.tsx";
import { Choice } from "../../parts/Choice.tsx";

const usual = [5, 10, 20, 60];

/** After how long without a touch the organiser's desk locks itself. */
export function IdleTime() {
  const { t } = useTranslation("lock");
  const trpc = useTRPC();
  const { idleMinutes } = useStanding();
  const set = useMutation(trpc.lock.setIdle.mutationOptions());
  const choices = [...new Set([...usual, idleMinutes])].sort((a, b) => a - b);
  return (
    <Choice
      label={t("idle.label")}
      help={t("idle.help")}
      value={String(set.isPending ? set.variables.minutes : idleMinutes)}
      onChange={(minutes) => set.mutate({ minutes: Number(minutes) })}
      options={choices.map((minutes) => ({
        value: String(minutes),
        label: t("idle.minutes", { count: minutes }),
      }))}
    />
  );
}
