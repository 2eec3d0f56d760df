import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { devicePlaces, numberOfPlace, useOfferedPlaces } from "../../parts/devices/places.ts";
import { type Column, DataTable } from "../../parts/layout/DataTable.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { useWriteTime } from "../../words/dates.ts";
import css from "./Devices.module.css";
import { PlaceOptions } from "./PlaceOptions.tsx";
import { type Listed, useNetworkActs } from "./view.ts";

/** Which devices are in use: each with what it is for, when it was heard of, and the way to send it away. */
export function DeviceList({ devices }: { readonly devices: readonly Listed[] }) {
  const { t } = useTranslation("devices");
  const columns = useColumns();
  if (devices.length === 0) return <Section title={t("list.title")}>{t("list.none")}</Section>;
  return (
    <Section title={t("list.title")} aside={<SendAllAway count={devices.length} />}>
      <DataTable<Listed>
        caption={t("list.title")}
        rows={devices}
        rowKey={({ id }) => id}
        columns={columns}
        rowHeight={60}
        maxHeight="none"
      />
    </Section>
  );
}

function useColumns(): Column<Listed>[] {
  const { t } = useTranslation("devices");
  const writeTime = useWriteTime();
  return [
    { key: "name", head: t("list.name"), cell: ({ name }) => name },
    { key: "place", head: t("list.place"), width: "24rem", cell: (device) => <PlaceOf device={device} /> },
    { key: "since", head: t("list.since"), width: "5.5rem", cell: ({ joinedAt }) => writeTime(joinedAt) },
    { key: "heard", head: t("list.heard"), width: "10rem", cell: (device) => <Heard device={device} /> },
    {
      key: "waiting",
      head: t("list.waiting"),
      kind: "number",
      width: "6rem",
      cell: ({ word }) => word?.waiting ?? t("list.unknown"),
    },
    {
      key: "battery",
      head: t("list.battery"),
      kind: "number",
      width: "6rem",
      cell: ({ word }) =>
        word?.battery === undefined || word.battery === null
          ? t("list.unknown")
          : t("list.percent", { value: word.battery }),
    },
    { key: "away", head: "", width: "9rem", cell: (device) => <SendAway device={device} /> },
  ];
}

/** How long nothing may be heard of a device before the table says so, in ms: three of its signs of life. */
const silentMs = 16_000;

function Heard({ device: { heardMs } }: { readonly device: Listed }) {
  const { t } = useTranslation("devices");
  if (heardMs === null) return t("list.notYet");
  if (heardMs < silentMs) return t("list.here");
  const minutes = Math.floor(heardMs / 60_000);
  return (
    <strong className={css.silent}>
      {minutes === 0
        ? t("list.silentSeconds", { count: Math.floor(heardMs / 1_000) })
        : t("list.silent", { count: minutes })}
    </strong>
  );
}

function PlaceOf({ device }: { readonly device: Listed }) {
  const { t } = useTranslation("devices");
  const offered = useOfferedPlaces(device.place);
  const { place } = useNetworkActs();
  return (
    <select
      className={css.place}
      aria-label={t("list.placeOf", { name: device.name })}
      value={numberOfPlace(device.place)}
      disabled={place.isPending}
      onChange={({ currentTarget }) => {
        const chosen = devicePlaces[Number(currentTarget.value)];
        if (chosen !== undefined) place.mutate({ deviceId: device.id, place: chosen });
      }}
    >
      <PlaceOptions offered={offered} />
    </select>
  );
}

/** Asks first: somebody may stand before that screen. */
function SendAway({ device: { id, name, word } }: { readonly device: Listed }) {
  const { t } = useTranslation("devices");
  const [asking, setAsking] = useState(false);
  const { sendAway } = useNetworkActs();
  return (
    <>
      <Button label={t("away.named", { name })} onPress={() => setAsking(true)}>
        {t("away.do")}
      </Button>
      {asking && (
        <ConfirmDialog
          title={t("away.title", { name })}
          cancel={t("away.keep")}
          confirm={t("away.do")}
          busy={sendAway.isPending}
          onConfirm={() => sendAway.mutate({ deviceId: id }, { onSettled: () => setAsking(false) })}
          onClose={() => setAsking(false)}
        >
          <p>{t("away.what")}</p>
          {word !== null && word.waiting > 0 && (
            <p className="strong">{t("away.waiting", { count: word.waiting })}</p>
          )}
        </ConfirmDialog>
      )}
    </>
  );
}

function SendAllAway({ count }: { readonly count: number }) {
  const { t } = useTranslation("devices");
  const [asking, setAsking] = useState(false);
  const { sendAllAway } = useNetworkActs();
  return (
    <>
      <Button onPress={() => setAsking(true)}>{t("all.do")}</Button>
      {asking && (
        <ConfirmDialog
          title={t("all.title", { count })}
          cancel={t("away.keep")}
          confirm={t("all.do")}
          busy={sendAllAway.isPending}
          onConfirm={() => sendAllAway.mutate(undefined, { onSettled: () => setAsking(false) })}
          onClose={() => setAsking(false)}
        >
          <p>{t("away.what")}</p>
        </ConfirmDialog>
      )}
    </>
  );
}
