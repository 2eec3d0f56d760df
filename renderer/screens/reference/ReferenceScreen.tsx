import { useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPC } from "../../app/client.tsx";
import { tellDone } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { FileZone } from "../../parts/controls/FileZone.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Panel, Section } from "../../parts/layout/Panel.tsx";
import { Progress } from "../../parts/layout/Progress.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { dateFormat } from "../../words/dates.ts";
import { writeNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { LookAtBundle } from "./LookAtBundle.tsx";
import css from "./Reference.module.css";
import { Tests } from "./Tests.tsx";
import type { KeptBundle } from "./types.ts";
import { type BundleInHand, tooBig, useBundle } from "./useBundle.ts";
import { useWriteQuarters } from "./words.ts";

/** Adds other organisers' bundles to compare with, under an origin, and lists those that are kept. */
export function ReferenceScreen() {
  const { t } = useTranslation("reference");
  const trpc = useTRPC();
  const list = useQuery(trpc.reference.list.queryOptions());
  const bundle = useBundle();
  return (
    <Screen title={t("title")} lead={t("lead")} ready={list.isFetched}>
      <div className={css.halves}>
        <InHand bundle={bundle} />
        <Stack as="section" gap={3} className={css.how}>
          <h2>{t("how.title")}</h2>
          <ul>
            <li>{t("how.same")}</li>
            <li>{t("how.origin")}</li>
            <li>{t("how.steps")}</li>
            <li>{t("how.twenty")}</li>
          </ul>
        </Stack>
      </div>
      <Section title={t("list.title")}>
        <Answer query={list}>
          {(references) => (references.length === 0 ? <Empty /> : <ReferenceTable references={references} />)}
        </Answer>
      </Section>
    </Screen>
  );
}

function InHand({ bundle }: { readonly bundle: BundleInHand }) {
  const { t } = useTranslation("reference");
  const { standing, putAway } = bundle;
  switch (standing.step) {
    case "none":
      return <BringBundle bundle={bundle} />;
    case "bringing":
      return <Progress label={t("reading", { name: standing.name })} done={null} total={1} />;
    case "refused":
      return <RefusedBundle name={standing.name} sentence={standing.sentence} onDone={putAway} />;
    case "brought":
      return <LookAtBundle name={standing.name} bundle={standing.bundle} onDone={putAway} />;
  }
}

function Empty() {
  const { t } = useTranslation("reference");
  return <EmptyState title={t("empty.title")} steps={[t("empty.ask"), t("empty.bring"), t("empty.look")]} />;
}

/** Takes a bundle that is chosen or dropped. */
function BringBundle({ bundle }: { readonly bundle: BundleInHand }) {
  const { t } = useTranslation("reference");
  const unreadable = { key: "reference:choose.unreadable" };
  return (
    <FileZone
      title={t("choose.drop")}
      button={t("choose.button")}
      note={t("choose.note")}
      accept=".zip,application/zip"
      onFile={bundle.bring}
      onRefused={(name, why) => bundle.refuse(name, why === "too-big" ? tooBig : unreadable)}
    />
  );
}

interface RefusedProps {
  readonly name: string;
  readonly sentence: Sentence;
  readonly onDone: () => void;
}

/** Says why a file was refused; nothing of it is kept. */
function RefusedBundle({ name, sentence, onDone }: RefusedProps) {
  const { t } = useTranslation("reference");
  const say = useSay();
  return (
    <Panel tone="alert" title={name}>
      <div role="alert">
        <p>{say(sentence)}</p>
        <p>{t("refused.nothing")}</p>
      </div>
      <div>
        <Button kind="primary" autoFocus onPress={onDone}>
          {t("refused.another")}
        </Button>
      </div>
    </Panel>
  );
}

/** Lists every kept bundle: its origin, its content, and the button that removes it. */
function ReferenceTable({ references }: { readonly references: readonly KeptBundle[] }) {
  const { t } = useTranslation("reference");
  const [removing, setRemoving] = useState<KeptBundle | null>(null);
  const columns = useColumns(setRemoving);
  return (
    <>
      <DataTable<KeptBundle>
        caption={t("list.title")}
        columns={columns}
        rows={references}
        rowKey={({ id }) => id}
        rowHeight={80}
        maxHeight="none"
      />
      {removing !== null && <RemoveDialog reference={removing} onClose={() => setRemoving(null)} />}
    </>
  );
}

function useColumns(remove: (reference: KeptBundle) => void): Column<KeptBundle>[] {
  const { t, i18n } = useTranslation("reference");
  const writeQuarters = useWriteQuarters();
  const format = dateFormat("dayHere", i18n.language);
  return [
    column("origin", t("list.origin"), "auto", ({ origin }) => <span className={css.whole}>{origin}</span>),
    numberColumn("marks", t("list.marks"), "5rem", ({ marks }) => writeNumber(marks, i18n.language)),
    column("tests", t("list.tests"), "32rem", ({ tests }) => <Tests tests={tests} />),
    column("when", t("list.when"), "11rem", ({ quarters, addedAt }) => (
      <>
        {writeQuarters(quarters)}
        <small className={`small quiet ${css.added}`}>
          {t("list.added", { date: format.format(new Date(addedAt)) })}
        </small>
      </>
    )),
    column("remove", <span className="unseen">{t("list.remove")}</span>, "8.5rem", (reference) => (
      <Button label={t("list.removeOf", { origin: reference.origin })} onPress={() => remove(reference)}>
        {t("list.remove")}
      </Button>
    )),
  ];
}

interface RemoveDialogProps {
  readonly reference: KeptBundle;
  readonly onClose: () => void;
}

/** Removes a bundle with all places among its marks, after a confirmation. */
function RemoveDialog({ reference: { id, origin, marks }, onClose }: RemoveDialogProps) {
  const { t, i18n } = useTranslation("reference");
  const trpc = useTRPC();
  const remove = useMutation(
    trpc.reference.remove.mutationOptions({
      onSuccess: tellDone({ key: "reference:remove.done", values: { origin } }, onClose),
      onError: onClose,
    }),
  );
  return (
    <ConfirmDialog
      title={t("remove.title", { origin })}
      cancel={t("remove.cancel")}
      confirm={t("remove.sure")}
      autoFocus
      busy={remove.isPending}
      onConfirm={() => remove.mutate({ id })}
      onClose={onClose}
    >
      <p>{t("remove.what", { count: marks, shown: writeNumber(marks, i18n.language) })}</p>
    </ConfirmDialog>
  );
}
