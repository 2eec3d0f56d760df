import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { Select } from "../../parts/controls/Select.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { writeDate, writeMoment } from "../../words/dates.ts";
import { BundleSteps } from "./BundleSteps.tsx";
import { NoDay } from "./NothingToShare.tsx";
import { type LogEntry, shortHash, type Wish } from "./preview.ts";

/** Shows what a neighbour could find out, what the bundle does about it, what it releases and withholds; writes it. */
export function BundleScreen() {
  const { t } = useTranslation(["bundle", "reference"]);
  const trpc = useTRPC();
  const [dayId, setDayId] = useState<number | null>(null);
  const [wish, setWish] = useState<Wish>({ kind: "marks", k: 5 });
  const preview = useQuery({
    ...trpc.bundle.preview.queryOptions(dayId === null ? wish : { ...wish, dayId }),
    placeholderData: keepPreviousData,
  });
  const log = useQuery(trpc.bundle.log.queryOptions());
  const shown = preview.data?.day.id ?? null;

  return (
    <Screen
      title={t("title")}
      lead={t("lead")}
      actions={
        <>
          <LinkButton to="/reference">{t("reference:link")}</LinkButton>
          {shown !== null && <DayChoice chosen={shown} onChoose={setDayId} />}
        </>
      }
      ready={preview.isFetched}
    >
      <Answer query={preview}>
        {(bundle) =>
          bundle === null ? (
            <NoDay />
          ) : (
            <>
              <WishChoice wish={wish} onChange={setWish} />
              <BundleSteps
                key={`${bundle.day.id} ${bundle.kind} ${bundle.k}`}
                bundle={bundle}
                isOld={preview.isPlaceholderData}
              />
            </>
          )
        }
      </Answer>
      <Answer query={log}>{(entries) => <ExportLog entries={entries} />}</Answer>
    </Screen>
  );
}

interface DayChoiceProps {
  readonly chosen: number;
  readonly onChoose: (dayId: number) => void;
}

/** Selects the day of the bundle; renders nothing while there is only one day. */
function DayChoice({ chosen, onChoose }: DayChoiceProps) {
  const { t, i18n } = useTranslation("bundle");
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const days = [...(current.data?.day == null ? [] : [current.data.day]), ...(current.data?.earlier ?? [])];
  if (days.length < 2) return null;
  return (
    <Select label={t("choose.label")} value={chosen} onChange={onChoose}>
      {days.map((day) => (
        <option key={day.id} value={day.id}>
          {`${day.title}, ${writeDate(day.date, i18n.language)}`}
        </option>
      ))}
    </Select>
  );
}

/** Selects the bundle's k, by its readers, and its kind: marks alone, or an athlete's marks linked. */
function WishChoice({ wish, onChange }: { readonly wish: Wish; readonly onChange: (wish: Wish) => void }) {
  const { t } = useTranslation("bundle");
  return (
    <Row gap={7} lines={4} wrap>
      <Choice
        label={t("wish.k.label")}
        value={String(wish.k)}
        options={[
          { value: "5", label: t("wish.k.5") },
          { value: "11", label: t("wish.k.11") },
        ]}
        onChange={(k) => onChange({ ...wish, k: k === "11" ? 11 : 5 })}
      />
      <Choice
        label={t("wish.kind.label")}
        value={wish.kind}
        options={[
          { value: "marks", label: t("wish.kind.marks") },
          { value: "profiles", label: t("wish.kind.profiles") },
        ]}
        onChange={(kind) => onChange({ ...wish, kind })}
      />
    </Row>
  );
}

/** Lists the bundles that were made, newest first, never a row of one. */
function ExportLog({ entries }: { readonly entries: readonly LogEntry[] }) {
  const { t, i18n } = useTranslation("bundle");
  const columns: Column<LogEntry>[] = [
    column("at", t("log.when"), "14rem", ({ at }) => writeMoment(at, i18n.language)),
    column("day", t("log.day"), "auto", ({ day }) => day?.title ?? ""),
    column("saved", t("log.saved"), "11rem", ({ saved }) => (saved ? t("log.left") : t("log.notSaved"))),
    numberColumn("k", t("log.k"), "12rem", ({ k }) => k),
    column("sha256", t("log.sha"), "14rem", ({ sha256 }) => <span title={sha256}>{shortHash(sha256)}</span>),
  ];
  return (
    <Section title={t("log.title")}>
      <DataTable
        caption={t("log.caption")}
        columns={columns}
        rows={entries}
        rowKey={({ id }) => id}
        empty={<p>{t("log.none")}</p>}
        maxHeight="18rem"
      />
    </Section>
  );
}
