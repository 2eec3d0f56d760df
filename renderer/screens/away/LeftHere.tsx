import { useState } from "react";
import { useTranslation } from "react-i18next";
import { keptHere, wipeKeep } from "../../app/device-keep.ts";
import { type KeptEntry, seenIn } from "../../app/kept-entries.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { useWriteSeen } from "../../tests/seen.ts";

/** On a device that has to join again: what the table does not have yet, and what becomes of it. */
export function LeftHere() {
  const { t } = useTranslation("join");
  const [asking, setAsking] = useState(false);
  const rows = keptHere.use().filter(({ saved }) => !saved);
  if (rows.length === 0) return null;
  return (
    <Stack as="section" gap={3}>
      <h2>{t("left.title", { count: rows.length })}</h2>
      <p>{t("left.what")}</p>
      <ul>
        {rows.map(({ channel, item }) => (
          <li key={item.id}>
            {channel === "entries" ? <Left item={item as KeptEntry} /> : t("refusedHere.tap")}
          </li>
        ))}
      </ul>
      <Button kind="danger" onPress={() => setAsking(true)}>
        {t("left.delete")}
      </Button>
      {asking && (
        <ConfirmDialog
          title={t("left.title", { count: rows.length })}
          cancel={t("left.keep")}
          confirm={t("left.delete")}
          busy={false}
          onConfirm={() => void wipeKeep()}
          onClose={() => setAsking(false)}
        >
          <p>{t("left.sure")}</p>
        </ConfirmDialog>
      )}
    </Stack>
  );
}

function Left({ item }: { readonly item: KeptEntry }) {
  const { t } = useTranslation("join");
  const writeSeen = useWriteSeen();
  if (item.what === "void") return t("refusedHere.void", { reason: item.input.reason });
  const { test, seen, lengths } = seenIn(item);
  const value = seen.map((each) => writeSeen(test, each, lengths)).join(" · ");
  return t("refusedHere.own", { bib: item.bib ?? "–", value });
}
