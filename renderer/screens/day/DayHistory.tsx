import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { writeMoment } from "../../words/dates.ts";

/** Lists the events of a day that was opened again: each opening and closing, by whom, and why. */
export function DayHistory({ dayId }: { readonly dayId: number }) {
  const { t, i18n } = useTranslation("planning");
  const trpc = useTRPC();
  const history = useQuery(trpc.day.history.queryOptions({ dayId }));
  const lines = history.data ?? [];
  if (!lines.some(({ kind }) => kind === "reopened")) return null;
  return (
    <Section title={t("history.title")}>
      <Stack as="ol" gap={2}>
        {lines.map(({ id, kind, at, by, reason }) => (
          <li key={id}>
            {writeMoment(at, i18n.language)}: {t(`history.${kind}`, { by, reason })}
          </li>
        ))}
      </Stack>
    </Section>
  );
}
