import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { dateFormat, useWriteDay } from "../../words/dates.ts";
import { writeNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { Key } from "./Key.tsx";
import { Tests } from "./Tests.tsx";
import type { BroughtTable } from "./types.ts";
import { useWriteSpan } from "./words.ts";

interface LookProps {
  readonly name: string;
  readonly table: BroughtTable;
  readonly onDone: () => void;
}

/** Shows the content of an uploaded reference table and who signed it, and adds it. */
export function LookAtTable({ name, table, onDone }: LookProps) {
  const { t, i18n } = useTranslation("reference");
  const writeDay = useWriteDay();
  const writeSpan = useWriteSpan();
  const { publisher, made, validUntil, marks, halls, quarters, bundles, tests, known, replaces } = table;
  const dates = { made: writeDay(made), until: writeDay(validUntil) };
  const number = (value: number) => writeNumber(value, i18n.language);
  return (
    <Panel title={name}>
      <p>
        {t("table.by", { publisher, ...dates })}{" "}
        {t("table.holds", {
          ...{ count: marks, shown: number(marks), halls: number(halls) },
          ...{ files: number(bundles), when: writeSpan(quarters) },
        })}
      </p>
      <Tests tests={tests} />
      {tests.every(({ sameRules }) => !sameRules) && <p>{t("look.nothingCompares")}</p>}
      {known ? (
        <Row gap={3} align="center" wrap role="status">
          <p>{t("table.known", { publisher })}</p>
          <Button autoFocus onPress={onDone}>
            {t("look.putAway")}
          </Button>
        </Row>
      ) : (
        <>
          <WhoSays table={table} />
          {replaces !== null && <p>{t("table.replaces", { date: writeDay(replaces) })}</p>}
          <AddTable table={table} onDone={onDone} />
        </>
      )}
    </Panel>
  );
}

/** Shows the key that a table is signed with, and what is known of it. */
function WhoSays({ table: { publisher, key, knownSince, formerly } }: Pick<LookProps, "table">) {
  const { t, i18n } = useTranslation("reference");
  const since = knownSince === null ? "" : dateFormat("dayHere", i18n.language).format(new Date(knownSince));
  return (
    <Stack gap={1} align="start">
      <h3>{knownSince === null ? t("table.who.first") : t("table.who.known", { date: since })}</h3>
      <Key digits={key} />
      {knownSince === null && <p>{t("table.who.compare", { publisher })}</p>}
      {formerly !== null && <p>{t("table.who.formerly", { name: formerly })}</p>}
    </Stack>
  );
}

function AddTable({ table: { tableId, knownSince }, onDone }: Omit<LookProps, "name">) {
  const { t } = useTranslation("reference");
  const say = useSay();
  const trpc = useTRPC();
  const add = useMutation(
    trpc.reference.addTable.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess({ added, publisher }) {
        const key = added ? "reference:table.done" : "reference:table.known";
        tell({ tone: added ? "done" : "note", sentence: { key, values: { publisher } } });
        onDone();
      },
    }),
  );
  const isNew = knownSince === null;
  return (
    <>
      {add.isError && <p role="alert">{say(sentenceOf(add.error))}</p>}
      <Row gap={3} align="center" wrap>
        <Button
          kind="primary"
          autoFocus={!isNew}
          busy={add.isPending}
          onPress={() => add.mutate({ tableId })}
        >
          {isNew ? t("table.addFirst") : t("table.add")}
        </Button>
        <Button autoFocus={isNew} onPress={onDone}>
          {t("add.leave")}
        </Button>
      </Row>
    </>
  );
}
