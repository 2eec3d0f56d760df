import i18next from "i18next";
import { createRoot, type Root } from "react-dom/client";
import "../app/base.css";
import "../app/print.css";
import type { DevicePlace } from "../../electron/domain/devices/place.ts";
import { countKept, keepDay, openKeep } from "../app/device-keep.ts";
import { resumeEntries } from "../app/kept-entries.ts";
import { languageToBegin } from "../app/language.ts";
import { heedTable, mustJoin } from "../app/let-go.ts";
import { membershipNow } from "../app/membership.ts";
import { ownLanguage } from "../app/ownLanguage.ts";
import { isDevice, isJoinedProgram, showTable } from "../app/table.ts";
import { LeaveCorner } from "../parts/frame/LeaveCorner.tsx";
import { TableAway } from "../parts/frame/TableAway.tsx";
import { AwayAtStart } from "../screens/join/AwayAtStart.tsx";
import { setUpWords } from "../words/setUp.ts";
import { ScreenFault } from "./ScreenFault.tsx";

/**
 * The host of the window is its role: `app://board` shows the hall's board, every other host the desk. A device on the
 * network asks the table what it is for; one that the table does not know joins first.
 */
async function loadApp(host: string, place: DevicePlace | null) {
  if (host === "board" || place?.role === "board") {
    document.documentElement.dataset.theme = "hall";
    return (await import("./BoardApp.tsx")).BoardApp;
  }
  document.documentElement.dataset.theme = "desk";
  return (await import("./DeskApp.tsx")).DeskApp;
}

/**
 * Refuses what is dragged into the window, wherever no field takes it: a file that is let go of anywhere else would be
 * opened by the browser in place of the page.
 */
function refuseStrayDrops(): void {
  for (const type of ["dragover", "drop"] as const) {
    window.addEventListener(type, (event) => {
      // A field that takes files has said so by now.
      if (event.defaultPrevented) return;
      event.preventDefault();
      if (event.dataTransfer !== null) event.dataTransfer.dropEffect = "none";
    });
  }
}

/** Says what a joined program waits for that was started while the table is away; its pages need no table. */
async function showAway(root: Root): Promise<void> {
  const membership = await membershipNow();
  if (membership.is !== "joined") return;
  if (!i18next.isInitialized) await setUpWords(membership.language);
  root.render(<AwayAtStart membership={membership} />);
}

/** Returns what this device is for; null in the program's own windows. Waits for a table that is out of reach. */
async function placeOfDevice(root: Root): Promise<DevicePlace | null> {
  if (!isDevice) return null;
  await openKeep();
  for (;;) {
    const table = await showTable({ waiting: countKept(), battery: null });
    if (table.state === "here") {
      keepDay(table.day);
      return table.place;
    }
    await heedTable(table);
    if (mustJoin(table)) location.replace("/join.html");
    else if (isJoinedProgram) await showAway(root);
    await new Promise((resolve) => setTimeout(resolve, 2_000));
  }
}

/** A device speaks to the person who holds it; what hangs for the whole hall speaks as the table does. */
async function firstLanguage(place: DevicePlace | null): Promise<string> {
  const own = place?.role === "board" ? null : ownLanguage();
  return own ?? languageToBegin();
}

async function boot(): Promise<void> {
  refuseStrayDrops();
  const element = document.getElementById("root");
  if (element === null) throw new Error("The page has no root element.");
  const root = createRoot(element);
  const place = await placeOfDevice(root);
  if (place !== null) resumeEntries();
  const [App] = await Promise.all([loadApp(location.host, place), firstLanguage(place).then(setUpWords)]);
  const isBoard = location.host === "board" || place?.role === "board";
  root.render(
    <>
      {place !== null && <TableAway place={place} />}
      <ScreenFault alone={isBoard}>
        <App />
      </ScreenFault>
      {isJoinedProgram && place?.role === "board" && <LeaveCorner />}
    </>,
  );
}

await boot();
