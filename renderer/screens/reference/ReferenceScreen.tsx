import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPC } from "../../app/client.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { FileZone } from "../../parts/controls/FileZone.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Panel, Section } from "../../parts/layout/Panel.tsx";
import { Progress } from "../../parts/layout/Progress.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { useSay } from "../../words/say.ts";
import { BundleList, KeyList, TableList } from "./KeptLists.tsx";
import { LookAtBundle } from "./LookAtBundle.tsx";
import { LookAtTable } from "./LookAtTable.tsx";
import css from "./Reference.module.css";
import type { Brought } from "./types.ts";
import { type BundleInHand, tooBig, useBundle } from "./useBundle.ts";

/** Adds other organisers' bundles and reference tables to compare with, and lists those that are kept, with whose keys are known. */
export function ReferenceScreen() {
  const { t } = useTranslation("reference");
  const trpc = useTRPC();
  const list = useQuery(trpc.reference.list.queryOptions());
  const tables = useQuery(trpc.reference.tables.queryOptions());
  const bundle = useBundle();
  return (
    <Screen title={t("title")} lead={t("lead")} ready={list.isFetched && tables.isFetched}>
      <div className={css.halves}>
        <InHand bundle={bundle} />
        <Stack as="section" gap={3} className={css.how}>
          <h2>{t("how.title")}</h2>
          <ul>
            <li>{t("how.same")}</li>
            <li>{t("how.origin")}</li>
            <li>{t("how.steps")}</li>
            <li>{t("how.halls")}</li>
            <li>{t("how.twenty")}</li>
          </ul>
        </Stack>
      </div>
      <Section title={t("list.title")}>
        <Answer query={list}>
          {(references) => (
            <Answer query={tables}>
              {({ tables: held }) => (
                <>
                  {references.length + held.length === 0 && <Empty />}
                  {held.length > 0 && <TableList tables={held} />}
                  {references.length > 0 && <BundleList references={references} />}
                </>
              )}
            </Answer>
          )}
        </Answer>
      </Section>
      {tables.data !== undefined && tables.data.publishers.length > 0 && (
        <Section title={t("keys.title")}>
          <p>{t("keys.why")}</p>
          <KeyList publishers={tables.data.publishers} />
        </Section>
      )}
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
      return <LookAt name={standing.name} brought={standing.brought} onDone={putAway} />;
  }
}

interface LookProps {
  readonly name: string;
  readonly brought: Brought;
  readonly onDone: () => void;
}

function LookAt({ brought, ...rest }: LookProps) {
  return brought.kind === "table" ? (
    <LookAtTable table={brought} {...rest} />
  ) : (
    <LookAtBundle bundle={brought} {...rest} />
  );
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
