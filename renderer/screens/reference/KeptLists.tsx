import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { dateFormat, useWriteDay } from "../../words/dates.ts";
import { writeNumber } from "../../words/numbers.ts";
import { Key } from "./Key.tsx";
import css from "./Reference.module.css";
import { ForgetPublisher, RemoveBundle, RemoveTable } from "./RemoveDialogs.tsx";
import { Tests } from "./Tests.tsx";
import type { KeptBundle, KeptTable, Publisher } from "./types.ts";
import { useWriteQuarters, useWriteSpan } from "./words.ts";

const small = `small quiet ${css.added}`;

/** Lists every kept bundle: its origin, its content, and the button that removes it. */
export function BundleList({ references }: { readonly references: readonly KeptBundle[] }) {
  const { t, i18n } = useTranslation("reference");
  const [removing, setRemoving] = useState<KeptBundle | null>(null);
  const writeQuarters = useWriteQuarters();
  const added = useWriteAdded();
  const columns: Column<KeptBundle>[] = [
    column("origin", t("list.origin"), "auto", ({ origin, inTableOf }) => (
      <span className={css.whole}>
        {origin}
        {inTableOf !== null && <small className={small}>{t("list.inTable", { publisher: inTableOf })}</small>}
      </span>
    )),
    numberColumn("marks", t("list.marks"), "8rem", ({ marks }) => writeNumber(marks, i18n.language)),
    column("tests", t("list.tests"), "28rem", ({ tests }) => <Tests tests={tests} />),
    column("when", t("list.when"), "13rem", ({ quarters, addedAt }) => (
      <>
        {writeQuarters(quarters)}
        <small className={small}>{added(addedAt)}</small>
      </>
    )),
    column("remove", <span className="unseen">{t("list.remove")}</span>, "8.5rem", (reference) => (
      <Button label={t("list.removeOf", { origin: reference.origin })} onPress={() => setRemoving(reference)}>
        {t("list.remove")}
      </Button>
    )),
  ];
  return (
    <>
      <DataTable<KeptBundle>
        caption={t("list.files")}
        columns={columns}
        rows={references}
        rowKey={({ id }) => id}
        rowHeight={80}
        maxHeight="none"
        whole
      />
      {removing !== null && <RemoveBundle reference={removing} onClose={() => setRemoving(null)} />}
    </>
  );
}

/** Lists every kept reference table: who made it and when, its content, and the button that removes it. */
export function TableList({ tables }: { readonly tables: readonly KeptTable[] }) {
  const { t, i18n } = useTranslation("reference");
  const [removing, setRemoving] = useState<KeptTable | null>(null);
  const writeSpan = useWriteSpan();
  const writeDay = useWriteDay();
  const number = (value: number) => writeNumber(value, i18n.language);
  const columns: Column<KeptTable>[] = [
    column("publisher", t("table.list.publisher"), "auto", ({ publisher, made }) => (
      <span className={css.whole}>
        {publisher}
        <small className={small}>{t("table.list.made", { date: writeDay(made) })}</small>
      </span>
    )),
    numberColumn("marks", t("list.marks"), "8rem", ({ marks, halls }) => (
      <>
        {number(marks)}
        <small className={small}>{t("table.list.halls", { count: halls, shown: number(halls) })}</small>
      </>
    )),
    column("tests", t("list.tests"), "28rem", ({ tests }) => <Tests tests={tests} />),
    column("when", t("list.when"), "13rem", ({ quarters, validUntil, expired }) => (
      <>
        {writeSpan(quarters)}
        <small className={expired ? css.added : small}>
          {t(expired ? "table.list.expired" : "table.list.until", { date: writeDay(validUntil) })}
        </small>
      </>
    )),
    column("remove", <span className="unseen">{t("list.remove")}</span>, "8.5rem", (table) => (
      <Button
        label={t("table.list.removeOf", { publisher: table.publisher })}
        onPress={() => setRemoving(table)}
      >
        {t("list.remove")}
      </Button>
    )),
  ];
  return (
    <>
      <DataTable<KeptTable>
        caption={t("table.list.title")}
        columns={columns}
        rows={tables}
        rowKey={({ id }) => id}
        rowHeight={80}
        maxHeight="none"
        whole
      />
      {removing !== null && <RemoveTable table={removing} onClose={() => setRemoving(null)} />}
    </>
  );
}

/** Lists whose keys are remembered, also of tables that were removed, and the button that forgets one. */
export function KeyList({ publishers }: { readonly publishers: readonly Publisher[] }) {
  const { t, i18n } = useTranslation("reference");
  const [forgetting, setForgetting] = useState<Publisher | null>(null);
  const columns: Column<Publisher>[] = [
    column("publisher", t("keys.name"), "auto", ({ publisher }) => (
      <span className={css.whole}>{publisher}</span>
    )),
    column("key", t("keys.key"), "24rem", ({ key }) => <Key digits={key} small />),
    column("since", t("keys.since"), "13rem", ({ since, hasTable }) => (
      <>
        {dateFormat("dayHere", i18n.language).format(new Date(since))}
        {!hasTable && <small className={small}>{t("keys.noTable")}</small>}
      </>
    )),
    column("forget", <span className="unseen">{t("keys.forget.button")}</span>, "8.5rem", (publisher) => (
      <Button
        label={t("keys.forget.of", { publisher: publisher.publisher })}
        onPress={() => setForgetting(publisher)}
      >
        {t("keys.forget.button")}
      </Button>
    )),
  ];
  return (
    <>
      <DataTable<Publisher>
        caption={t("keys.title")}
        columns={columns}
        rows={publishers}
        rowKey={({ id }) => id}
        rowHeight={64}
        maxHeight="none"
        whole
      />
      {forgetting !== null && <ForgetPublisher of={forgetting} onClose={() => setForgetting(null)} />}
    </>
  );
}

function useWriteAdded(): (instant: string) => string {
  const { t, i18n } = useTranslation("reference");
  const format = dateFormat("dayHere", i18n.language);
  return (instant) => t("list.added", { date: format.format(new Date(instant)) });
}
