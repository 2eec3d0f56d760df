import { createElement, Fragment } from "react";
import { createRoot } from "react-dom/client";
import { isWaiting, keepDay, keptHere, onDisk, openKeep } from "../../../renderer/app/device-keep.ts";
import { useHandIn } from "../../../renderer/app/hand-in.ts";
import { type KeptEntry, keepAndSend, resumeEntries } from "../../../renderer/app/kept-entries.ts";
import { showTable } from "../../../renderer/app/table.ts";
import { TableAway } from "../../../renderer/parts/frame/TableAway.tsx";
import { setUpWords } from "../../../renderer/words/setUp.ts";
import { station, type TrialStation } from "./station.ts";

/** What a device of the trials does and says: the product's own outbox, keep and comparison, without its screens. */
export interface TrialDevice {
  /** Enters as somebody who types does; resolves once it lies on the device's disk. */
  enter(item: KeptEntry): Promise<void>;
  /** Enters, and waits until the table has it. */
  enterThere(item: KeptEntry): Promise<void>;
  /** How many entries wait, were refused, and were saved here. */
  counts(): { readonly waiting: number; readonly refused: number; readonly saved: number };
  /** Ids that the table was ever heard to have on its disk. */
  acknowledged(): readonly string[];
  readonly station: TrialStation;
}

declare global {
  interface Window {
    device?: TrialDevice;
  }
}

const acknowledged = new Set<string>();

/** Compares with the table as a device's own screens do, and notes what the table was heard to have. */
function HandIn() {
  useHandIn("Handed in");
  const rows = keptHere.use();
  for (const { saved, item } of rows) if (saved) acknowledged.add(item.id);
  return null;
}

async function begin(): Promise<void> {
  await openKeep();
  await setUpWords("en");
  const table = await showTable({ waiting: 0, battery: null });
  if (table.state !== "here") throw new Error(`The table says: ${table.state}.`);
  keepDay(table.day);
  resumeEntries();
  const root = document.getElementById("root");
  if (root === null) throw new Error("The page has no root element.");
  const follow = createElement(TableAway, { place: table.place });
  createRoot(root).render(createElement(Fragment, null, follow, createElement(HandIn)));
  window.device = {
    async enter(item) {
      void keepAndSend(item);
      await onDisk();
    },
    async enterThere(item) {
      await keepAndSend(item);
    },
    counts() {
      const rows = keptHere.get();
      const refused = rows.filter((row) => row.refused !== null).length;
      return { waiting: rows.filter(isWaiting).length, refused, saved: rows.filter((r) => r.saved).length };
    },
    acknowledged: () => [...acknowledged],
    station,
  };
}

await begin();
