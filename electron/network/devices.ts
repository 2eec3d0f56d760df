import { randomBytes, randomUUID } from "node:crypto";
import type { DevicePlace, JoinedDevice } from "../domain/devices/place.ts";
import type { Store } from "../store/connection/store.ts";
import { allErasures } from "../store/erasure/erase-log.ts";
import { dayAtHand, identityOfDay } from "../store/tables/days.ts";
import {
  type DeviceOfDay,
  deviceByToken,
  devicesOf,
  keepDevice,
  placeDevice,
  removeDevice,
  removeDevicesBut,
} from "../store/tables/devices.ts";
import type { GoneDevices, WhyGone } from "./gone.ts";
import { hashOf } from "./joining.ts";

/** Most devices of a day. */
const mostDevices = 64;
const tokenBytes = 32;
/** A device says that it is there every five seconds: one that misses three of them is gone, in ms. */
const latelyMs = 16_000;

/** What a device says of itself when it shows that it is there. @public declarations of all procedures name it */
export interface DeviceWord {
  /** Entries that it keeps until the table has them. */
  readonly waiting: number;
  /** In per cent; null where the browser does not tell. */
  readonly battery: number | null;
  /** As of when it has compared all that it keeps (`asOf`); null where it has not. */
  readonly compared: string | null;
}

/** A device as the table lists it. */
export interface ListedDevice extends DeviceOfDay {
  /** Ms since it was heard of; null for one that was not, since the program started. */
  readonly heardMs: number | null;
  readonly word: Omit<DeviceWord, "compared"> | null;
  /** True where it keeps nothing of anybody who was deleted, and has handed in what the store lacked. */
  readonly isCompared: boolean;
}

interface DevicesParts {
  store(): Store;
  /** Which store it is. */
  kind(): string;
  ms(): number;
  now(): Date;
  readonly gone: GoneDevices;
  /** Called when a device is no longer what it was: its streams and connections end. */
  cut(deviceId: string): void;
}

/** The devices of the day at hand. */
export interface Devices {
  list(): ListedDevice[];
  /** True while there is room for another one. */
  hasRoom(): boolean;
  /** Takes a device in and returns its token, which is kept nowhere; again, when its answer was lost on the way. */
  take(device: JoinedDevice): string;
  /** Returns the device that holds a token, and notes that it was heard of; null for any other token. */
  holderOf(token: string | null): JoinedDevice | null;
  /** Returns what tells the day at hand from every other one; null without one. */
  day(): string | null;
  /** Returns what is another text once the store was opened anew, maybe from a backup, or somebody was deleted from it. */
  asOf(): string;
  /** Returns why the table let the holder of a token go; null for any other token. */
  whyGone(token: string | null): WhyGone | null;
  /** Returns true while a device is joined and was heard of lately. */
  isThere(deviceId: string): boolean;
  heard(deviceId: string, word: DeviceWord): void;
  place(deviceId: string, place: DevicePlace): boolean;
  sendAway(deviceId: string): boolean;
  /** A device goes by itself: what it holds open it closes by itself too. */
  leave(deviceId: string): void;
  sendAllAway(): void;
  /**
   * Forgets the devices of every day but the one at hand. Returns the hashes of the tokens of those that were heard of
   * lately: they are there to hear it.
   */
  forgetOthers(): string[];
}

export function createDevices({ store, kind, ms, now, gone, cut }: DevicesParts): Devices {
  const heardAt = new Map<string, number>();
  const openings = new WeakMap<Store, string>();
  const words = new Map<string, DeviceWord>();
  const dayId = () => dayAtHand(store().db)?.id ?? null;
  const listed = () => {
    const day = dayId();
    return day === null ? [] : devicesOf(store().db, day);
  };

  function isLately(at: number | undefined): boolean {
    return at !== undefined && ms() - at < latelyMs;
  }

  function asOf(): string {
    const open = store();
    const opening = openings.get(open) ?? randomUUID();
    openings.set(open, opening);
    return `${opening} ${allErasures(open.db)[0]?.id ?? ""}`;
  }

  function leave(deviceId: string): boolean {
    const tokenHash = store().write([], (db) => removeDevice(db, deviceId));
    heardAt.delete(deviceId);
    words.delete(deviceId);
    if (tokenHash !== undefined) gone.note([tokenHash], "sentAway");
    return tokenHash !== undefined;
  }

  function sendAway(deviceId: string): boolean {
    const was = leave(deviceId);
    cut(deviceId);
    return was;
  }

  return {
    list: () =>
      listed().map((device) => {
        const at = heardAt.get(device.id);
        const said = words.get(device.id);
        const word = said === undefined ? null : { waiting: said.waiting, battery: said.battery };
        const heardMs = at === undefined ? null : ms() - at;
        return { ...device, heardMs, word, isCompared: said?.compared === asOf() };
      }),
    hasRoom: () => listed().length < mostDevices,
    take(device) {
      const day = dayId();
      if (day === null) throw new Error("a device joins a day");
      const token = randomBytes(tokenBytes).toString("base64url");
      const joinedAt = now().toISOString();
      store().write([], (db) => keepDevice(db, day, { ...device, joinedAt }, hashOf(token)));
      return token;
    },
    holderOf(token) {
      const day = dayId();
      if (token === null || day === null) return null;
      // Found by the hash of 256 bits of chance: how long that takes tells nobody anything.
      const device = deviceByToken(store().db, day, hashOf(token));
      if (device === undefined) return null;
      heardAt.set(device.id, ms());
      return device;
    },
    day() {
      const day = dayAtHand(store().db);
      return day === undefined ? null : `${kind()} ${identityOfDay(store().db, day.id)}`;
    },
    asOf,
    whyGone: gone.whyOf,
    isThere: (deviceId) => isLately(heardAt.get(deviceId)) && listed().some(({ id }) => id === deviceId),
    heard: (deviceId, word) => void words.set(deviceId, word),
    place(deviceId, place) {
      const was = store().write([], (db) => placeDevice(db, deviceId, place));
      // What it still reads, it reads with the rights of the place that it had.
      cut(deviceId);
      return was;
    },
    sendAway,
    leave,
    sendAllAway() {
      for (const { id } of listed()) sendAway(id);
    },
    forgetOthers() {
      const day = dayId();
      const forgotten = store().write([], (db) => removeDevicesBut(db, day));
      const hashesOf = (those: typeof forgotten) => those.map(({ tokenHash }) => tokenHash);
      gone.note(hashesOf(forgotten), "closed");
      return hashesOf(forgotten.filter(({ id }) => isLately(heardAt.get(id))));
    },
  };
}
