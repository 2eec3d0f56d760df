import type { DevicePlace } from "../../electron/domain/devices/place.ts";
import { createCell } from "./cell.ts";

/** True in a laptop's own program that joined another laptop's table: its shell carries what pages ask of the table. */
export const isJoinedProgram = location.origin === "app://device";

/** True on a device of the table: in a browser on the hall's network, and in a joined program. */
export const isDevice = location.protocol === "https:" || isJoinedProgram;

/** Since when the table does not answer (ISO 8601); null while it does. */
export const tableAway = createCell<string | null>(null);

/** The name of this device at the table; empty before the first answer. */
export const ownName = createCell("");

/** True on a device once the table has said that the day is closed. */
export const dayOver = createCell(false);

/**
 * What stands for the table's data; null before the first answer. Another text: they may be those of an earlier backup, also
 * where the table was away for too short a time to be missed; or somebody was deleted from them.
 */
export const tableAsOf = createCell<string | null>(null);

/** With which of them this device has compared all that it keeps. */
export const comparedAsOf = createCell<string | null>(null);

/**
 * What the table says of this device. `away`: it can't be reached. `unknown`: its cookie ended, or the table came back
 * from an earlier backup; it joins again and keeps what it has. `sentAway` and `closed`: the table let it go.
 */
export type Standing =
  | { readonly state: "away" | "unknown" | "sentAway" | "closed" }
  | { readonly state: "here"; readonly name: string; readonly place: DevicePlace; readonly day: string };

/** What this device says of itself. */
export interface OwnWord {
  readonly waiting: number;
  readonly battery: number | null;
}

interface Told {
  readonly name: string;
  readonly place: DevicePlace;
  readonly day: string;
  readonly asOf: string;
}

interface LetGo {
  readonly why: "sentAway" | "closed";
}

/** How long an answer of the table is waited for, in ms. */
const patienceMs = 4_000;

/** Sends something to the table beside the door; null when no answer comes. */
export async function tellTable(path: string, body: object, waitMs = patienceMs): Promise<Response | null> {
  try {
    return await fetch(path, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(waitMs),
    });
  } catch {
    // Out of reach: whoever asks says so to people.
    return null;
  }
}

/** Reads what an answer says; null where it broke off on the way, as when the table ends every connection. */
async function wordOf<Word>(answer: Response): Promise<Word | null> {
  try {
    return (await answer.json()) as Word;
  } catch {
    return null;
  }
}

/** Shows the table that this device is there, and returns what it is used for. */
export async function showTable(word: OwnWord): Promise<Standing> {
  const answer = await tellTable("/device/here", { ...word, compared: comparedAsOf.get() });
  if (answer === null) return { state: "away" };
  if (answer.status === 410) return { state: (await wordOf<LetGo>(answer))?.why ?? "away" };
  if (!answer.ok) return { state: answer.status === 401 ? "unknown" : "away" };
  const told = await wordOf<Told>(answer);
  if (told === null) return { state: "away" };
  const { name, place, day, asOf } = told;
  tableAsOf.set(asOf);
  ownName.set(name);
  return { state: "here", name, place, day };
}
