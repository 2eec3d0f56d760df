import { useMutation, useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { type Column, column, DataTable } from "../../../parts/layout/DataTable.tsx";
import { Section } from "../../../parts/layout/Panel.tsx";
import { writeMoment } from "../../../words/dates.ts";
import css from "./Held.module.css";
import type { Erasure } from "./types.ts";

/** Lists the erasures, with when and by whom; nothing where there were none. */
export function Erasures() {
  const { t } = useTranslation("held");
  const trpc = useTRPC();
  const all = useQuery(trpc.people.erasures.queryOptions()).data ?? [];
  const columns = useColumns();
  if (all.length === 0) return null;
  return (
    <Section title={t("log.title")}>
      <p>{t("log.what")}</p>
      {all.some(({ wiped }) => !wiped) && <Due />}
      <NotReached since={all[0]?.at ?? ""} />
      <DataTable<Erasure>
        caption={t("log.title")}
        columns={columns}
        rows={all}
        rowKey={({ id }) => id}
        maxHeight="18rem"
      />
    </Section>
  );
}

function useColumns(): Column<Erasure>[] {
  const { t, i18n } = useTranslation("held");
  return [
    column("at", t("log.when"), "14rem", ({ at }) => writeMoment(at, i18n.language)),
    column("by", t("log.by"), "8rem", ({ by }) => by),
    column("file", t("log.file"), "auto", ({ wiped }) => t(wiped ? "log.wiped" : "log.notWiped")),
  ];
}

/** How often it is looked whether devices have been reached, in ms. */
const lookMs = 5_000;

/** Names the devices that joined before the last deletion and have not been heard to have heeded it. `since`: ISO 8601. */
function NotReached({ since }: { readonly since: string }) {
  const { t, i18n } = useTranslation("held");
  const trpc = useTRPC();
  const view = useQuery(trpc.network.view.queryOptions(undefined, { refetchInterval: lookMs })).data;
  const names = (view?.devices ?? [])
    .filter(({ place, joinedAt, isCompared }) => place.role !== "board" && joinedAt < since && !isCompared)
    .map(({ name }) => name);
  if (names.length === 0) return null;
  const devices = new Intl.ListFormat(i18n.language).format(names);
  return <p role="status">{t("log.notReached", { devices })}</p>;
}

/** Says that wiping failed, because the disk was full or something read the store; it can be retried at any time. */
function Due() {
  const { t } = useTranslation("held");
  const trpc = useTRPC();
  const again = useMutation(
    trpc.people.wipeAgain.mutationOptions({
      onSuccess: ({ notWiped }) =>
        tell(
          notWiped === null
            ? { tone: "done", sentence: { key: "held:log.done" } }
            : { tone: "alert", sentence: notWiped },
        ),
    }),
  );
  return (
    <Row gap={4} lines={3} align="center" wrap className={`strong ${css.due}`}>
      <p>{t("log.due")}</p>
      <Button busy={again.isPending} onPress={() => again.mutate()}>
        {t("log.again")}
      </Button>
    </Row>
  );
}
