import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { Select } from "../../parts/controls/Select.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { writeDate } from "../../words/dates.ts";
import { pathOf } from "./paths.ts";
import type { Summary } from "./summary.ts";

/** Selects the day, and the league or everybody. */
export function Which({ summary }: { readonly summary: Summary }) {
  const { t, i18n } = useTranslation("summary");
  const [, go] = useLocation();
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const days = [...(current.data?.day == null ? [] : [current.data.day]), ...(current.data?.earlier ?? [])];
  const { day, league, leagues } = summary;
  return (
    <Row gap={5} lines={4} wrap>
      {days.length > 1 && (
        <Select label={t("which.day")} value={day.id} onChange={(id) => go(pathOf(id, null))}>
          {days.map(({ id, title, date }) => (
            <option key={id} value={id}>
              {t("ofDay", { title, date: writeDate(date, i18n.language) })}
            </option>
          ))}
        </Select>
      )}
      {leagues.length > 0 && (
        <Select
          label={t("which.league")}
          value={league?.id ?? 0}
          onChange={(id) => go(pathOf(day.id, id === 0 ? null : id))}
        >
          <option value={0}>{t("which.all")}</option>
          {leagues.map(({ id, name, listed }) => (
            <option key={id} value={id}>
              {`${name} (${listed})`}
            </option>
          ))}
        </Select>
      )}
    </Row>
  );
}
