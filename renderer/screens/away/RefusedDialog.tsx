import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { isOfToday, type KeptRow, takeOut } from "../../app/device-keep.ts";
import { type KeptEntry, type SeenEntry, seenIn, sendAgain, useRefused } from "../../app/kept-entries.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { useWriteSeen } from "../../tests/seen.ts";
import { useSay } from "../../words/say.ts";

/** Lists what the table refused: this device's value, what the table has, why, and what can be done. */
export function RefusedDialog({ onClose }: { readonly onClose: () => void }) {
  const { t } = useTranslation("join");
  const rows = useRefused();
  return (
    <Dialog
      onClose={onClose}
      title={t("refusedHere.title")}
      actions={<Button onPress={onClose}>{t("refusedHere.close")}</Button>}
    >
      <Stack as="ul">
        {rows.map((row) => (
          <li key={row.item.id}>
            <Refused row={row} />
          </li>
        ))}
      </Stack>
    </Dialog>
  );
}

function Refused({ row }: { readonly row: KeptRow }) {
  const { t } = useTranslation("join");
  const say = useSay();
  const item = row.channel === "entries" ? (row.item as KeptEntry) : null;
  return (
    <Stack gap={2}>
      {item?.what === "enter" && <BothValues item={item} />}
      {item?.what === "read" && <OwnValue item={item} />}
      {item?.what === "void" && <p>{t("refusedHere.void", { reason: item.input.reason })}</p>}
      {item === null && <p>{t("refusedHere.tap")}</p>}
      {row.refused?.told.map((each) => (
        <p key={each.key}>{say(each)}</p>
      ))}
      <Row gap={3} wrap>
        {item !== null && isOfToday(row) && (
          <Button onPress={() => sendAgain(row)}>
            {t(row.refused?.asked === true ? "refusedHere.again" : "refusedHere.retry")}
          </Button>
        )}
        <Button kind="danger" onPress={() => takeOut(row)}>
          {t("refusedHere.drop")}
        </Button>
      </Row>
    </Stack>
  );
}

function OwnValue({ item }: { readonly item: SeenEntry }) {
  const { t } = useTranslation("join");
  const writeSeen = useWriteSeen();
  const { test, seen, lengths } = seenIn(item);
  const value = seen.map((each) => writeSeen(test, each, lengths)).join(" · ");
  return <p>{t("refusedHere.own", { bib: item.bib ?? "–", value })}</p>;
}

function BothValues({ item }: { readonly item: Extract<KeptEntry, { what: "enter" }> }) {
  const { t } = useTranslation("join");
  const trpc = useTRPC();
  const writeSeen = useWriteSeen();
  const { athleteId, test, lengths = "cm" } = item.entry;
  const plain = (seen: unknown) => writeSeen(test, seen, lengths);
  const there = useQuery(trpc.station.history.queryOptions({ athleteId, test })).data ?? [];
  const standing = there.filter(({ attempt }) => attempt.void === null).map(({ attempt }) => attempt);
  return (
    <>
      <OwnValue item={item} />
      {standing.map(({ attemptId, seen, by }) => (
        <p key={attemptId}>{t("refusedHere.theirs", { value: plain(seen), by })}</p>
      ))}
    </>
  );
}
