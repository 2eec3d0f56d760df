import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC, useTRPCClient } from "../../app/client.tsx";
import { bytesOf, saveMade, textFile } from "../../app/saving.ts";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Panel, Section } from "../../parts/layout/Panel.tsx";
import css from "./SheetsPart.module.css";
import type { Summary } from "./summary.ts";

/** The sheets whose purpose the word file explains. */
const kinds = [
  "athletes",
  "athletes_marks",
  "league_changes",
  "missing",
  "attempts",
  "stations",
  "station_times",
  "judges",
  "typical_errors",
] as const;

/** Saves the sheets, one by one or all in one file, after a caution about the names they hold. */
export function SheetsPart({ summary }: { readonly summary: Summary }) {
  const { t } = useTranslation("summary");
  const trpc = useTRPC();
  const client = useTRPCClient();
  const [busy, setBusy] = useState(false);
  const { league } = summary;
  const which = { dayId: summary.day.id, leagueId: league?.id ?? null };
  const sheets = useQuery(trpc.summary.sheets.queryOptions(which));

  async function run(work: Promise<void>): Promise<void> {
    setBusy(true);
    await work.finally(() => setBusy(false));
  }
  const saveAll = () => run(saveMade("summary", () => client.summary.zip.query(which).then(zipFile)));
  const saveOne = (name: string) =>
    run(saveMade("summary", () => client.summary.sheet.query({ ...which, name }).then(textFile)));
  return (
    <Section title={t("sheets.title")}>
      <Panel
        title={t("sheets.names")}
        tone="alert"
        aside={<LinkButton to="/bundle">{t("sheets.toBundle")}</LinkButton>}
      >
        <p className={css.whose}>
          {league === null ? t("sheets.whose") : t("sheets.whoseLeague", { league: league.name })}
        </p>
        <div>
          <Button kind="primary" busy={busy} onPress={() => void saveAll()}>
            {t("sheets.all")}
          </Button>
        </div>
      </Panel>
      <Answer query={sheets}>
        {(files) => (
          <ul>
            {files.map(({ name, rows }) => (
              <li key={name} className={css.file}>
                <strong>{name}</strong>
                <What name={name} />
                <span className={css.rows}>{rows !== null && t("sheets.rows", { count: rows })}</span>
                <Button busy={busy} label={t("sheets.oneWhich", { name })} onPress={() => void saveOne(name)}>
                  {t("sheets.one")}
                </Button>
              </li>
            ))}
          </ul>
        )}
      </Answer>
    </Section>
  );
}

function zipFile({ name, bytes }: { readonly name: string; readonly bytes: string }) {
  return { suggestedName: name, bytes: bytesOf(bytes) };
}

function What({ name }: { readonly name: string }) {
  const { t } = useTranslation("summary");
  const kind = kinds.find((each) => name === `${each}.csv`);
  return <span>{kind === undefined ? t("sheets.explains") : t(`sheets.what.${kind}`)}</span>;
}
