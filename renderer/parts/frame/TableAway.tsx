import { useEffect } from "react";
import { useTranslation } from "react-i18next";
import type { DevicePlace } from "../../../electron/domain/devices/place.ts";
import { countKept, onDisk } from "../../app/device-keep.ts";
import { heedTable, mustJoin } from "../../app/let-go.ts";
import { dayOver, showTable, tableAway } from "../../app/table.ts";
import { useWriteTime } from "../../words/dates.ts";
import css from "./TableAway.module.css";

/** How often a device shows that it is there, in ms. */
const everyMs = 5_000;

interface BatteryStatus {
  readonly level: number;
}

/**
 * Follows the table from a device: says since when it is out of reach, and begins anew when the device was sent away or
 * has another place. Use it once per window.
 */
export function TableAway({ place }: { readonly place: DevicePlace }) {
  const { t } = useTranslation("join");
  const writeTime = useWriteTime();
  const since = useTable(place);
  return (
    <div role="status">
      {since !== null && place.role === "board" && (
        <p className={css.away}>{t("here.away", { time: writeTime(since) })}</p>
      )}
    </div>
  );
}

/** Returns since when the table does not answer (ISO 8601); null while it does. */
function useTable(place: DevicePlace): string | null {
  useEffect(() => {
    let over = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    async function look(): Promise<void> {
      const table = await showTable({ waiting: countKept(), battery: await batteryNow() });
      if (over) return;
      await heedTable(table);
      // A big screen thanks everybody, as the table's own does: there is nothing to join any more.
      if (place.role === "board" && dayOver.get()) return tableAway.set(null);
      if (mustJoin(table)) return location.replace("/join.html");
      if (table.state === "here" && JSON.stringify(table.place) !== JSON.stringify(place)) {
        await onDisk();
        return location.reload();
      }
      tableAway.set(table.state === "here" ? null : (tableAway.get() ?? new Date().toISOString()));
      timer = setTimeout(() => void look(), everyMs);
    }
    void look();
    return () => {
      over = true;
      clearTimeout(timer);
    };
  }, [place]);
  return tableAway.use();
}

/** Returns the battery in per cent where the browser tells (W3C Battery Status). */
async function batteryNow(): Promise<number | null> {
  const ask = (navigator as { getBattery?: () => Promise<BatteryStatus> }).getBattery;
  if (ask === undefined) return null;
  const { level } = await ask.call(navigator);
  return Math.round(level * 100);
}
