import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import type { Answers } from "../../app/answers.ts";
import { useTRPC } from "../../app/client.tsx";
import { writeDate, writeTime } from "../../words/dates.ts";

type Outputs = Answers["backups"];
export type BackupState = Outputs["state"];
export type BackupPlace = BackupState["places"][number];
export type ListedBackup = Outputs["list"]["backups"][number];

/** Ms between readings, at rest and during a backup: backups and sticks come and go without a change in the store. */
const restMs = 10_000;
const busyMs = 300;

/** Reads the backup places and their state; `watched` while one is being made. */
export function useBackups(watched = false) {
  const trpc = useTRPC();
  return useQuery(
    trpc.backups.state.queryOptions(undefined, {
      refetchInterval: ({ state }) => (watched || state.data?.running != null ? busyMs : restMs),
    }),
  );
}

/** Formats an instant in local time: "today at 14:05", "Saturday 14 November 2026, 14:05". */
export function useWhen(): (instant: string) => string {
  const { t, i18n } = useTranslation("backups");
  return (instant) => {
    const time = writeTime(instant, i18n.language);
    const day = localDate(new Date(instant));
    if (day === localDate(new Date())) return t("today", { time });
    return t("before", { date: writeDate(day, i18n.language), time });
  };
}

function localDate(at: Date): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}
