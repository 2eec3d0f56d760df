import type { Server } from "node:https";
import type { DevicePlace } from "../domain/devices/place.ts";
import { Refusal } from "../domain/refusal.ts";
import { sentence } from "../domain/words.ts";
import type { Store } from "../store/connection/store.ts";
import { dayAtHand } from "../store/tables/days.ts";
import { addressesHere, hostOf, isOwnAddress, type OwnAddress } from "./addresses.ts";
import { type ConnectionLimits, createConnections, usualLimits } from "./connections.ts";
import { createDevices, type ListedDevice } from "./devices.ts";
import { createGone } from "./gone.ts";
import { beginGoodbye, type Goodbye } from "./goodbye.ts";
import { identityFor, keyOf, shortFormOf } from "./identity.ts";
import { type Asking, createJoining } from "./joining.ts";
import { type NetworkKeep, readSwitch, writeSwitch } from "./kept.ts";
import { refuseFor, requireOn } from "./refuse.ts";
import { endServer, listenOn, makeServer, type Patience, usualPatience } from "./server.ts";
import { type Carried, createSite } from "./site.ts";

export interface NetworkParts {
  readonly keep: NetworkKeep;
  /** The store in use, and which one it is. */
  store(): Store;
  kind(): string;
  now(): Date;
  /** Returns the calendar day now, ISO 8601. */
  today(): string;
  /** A monotonic clock. */
  ms(): number;
  /** Called after every change that the table's screen shows. */
  changed(): void;
  readonly limits?: ConnectionLimits;
  readonly patience?: Patience;
}

/** Where the server listens. @public declarations of all procedures name it */
export interface Listening {
  readonly address: string;
  readonly port: number;
  /** As a device opens it: `https://192.0.2.7:8443/`. */
  readonly url: string;
  /** What people compare of the key. */
  readonly shortForm: string;
}

/** The network as the table's screen shows it. */
export interface NetworkView {
  readonly on: Listening | null;
  readonly addresses: readonly OwnAddress[];
  /** The port to offer. */
  readonly port: number;
  readonly code: { readonly code: string; readonly leftMs: number } | null;
  readonly shutMs: number;
  readonly asking: readonly Asking[];
  readonly devices: readonly ListedDevice[];
}

/** The door to the hall's network: shut, until the organiser opens it. */
export interface Network {
  view(): NetworkView;
  /** Gives it what it serves. Before that it can't be turned on. */
  carry(carried: Carried): void;
  /** Starts to listen at one address of this computer. @throws Refusal */
  turnOn(address: string, port: number): Promise<void>;
  /** Ends every connection and listens no more; devices may come back when it is turned on again. */
  turnOff(): Promise<void>;
  /** Ends as turning off does, for a program that ends: started again on the same day it goes on. */
  stop(): Promise<void>;
  /** Turns it on again as it was, where the program was started anew on the same day. Never rejects. */
  resume(): Promise<void>;
  /** Takes the key over that came with a backup, and is off until it is turned on with it. Throws when it can't be kept. */
  takeKey(pem: string): void;
  openJoining(): void;
  closeJoining(): void;
  /** Answers a device that asks to join: its place, or null for no. @throws Refusal when it asks no more */
  answer(askId: string, place: DevicePlace | null): void;
  /** Returns true while a device is joined and was heard of lately. */
  isThere(deviceId: string): boolean;
  place(deviceId: string, place: DevicePlace): void;
  sendAway(deviceId: string): void;
  sendAllAway(): void;
  /** Looks whether the day for which it was turned on is still at hand; turns off if not. */
  lookAtDay(): void;
  /** Returns how many connections are open. */
  connections(): number;
}

interface Running extends Listening {
  readonly server: Server;
  readonly kind: string;
  readonly dayId: number;
}

export function createNetwork(parts: NetworkParts): Network {
  const { keep, ms, changed } = parts;
  let carried: Carried | null = null;
  let running: Running | null = null;
  /** The server of a day that was closed, while it still tells devices so. */
  let leaving: { readonly server: Server; readonly goodbye: Goodbye } | null = null;
  let turning = false;
  const { port } = readSwitch(keep);
  let offered = port;
  const connections = createConnections(parts.limits ?? usualLimits);
  const joining = createJoining(ms, changed);
  const gone = createGone(keep);
  const devices = createDevices({ ...parts, gone, cut: connections.end });
  const day = () => dayAtHand(parts.store().db);

  function keepSwitch(on: { address: string; dayId: number } | null): void {
    // The demo is new at each start.
    const kept = on === null || parts.kind() !== "own" ? null : { ...on, date: parts.today() };
    writeSwitch(keep, { ...readSwitch(keep), port: offered, on: kept });
  }

  async function begin(address: string, wanted: number): Promise<Running> {
    const current = day();
    if (carried === null) throw new Refusal("unavailable", sentence("network.notHere"));
    if (current === undefined) throw new Refusal("unavailable", sentence("network.noDay"));
    if (!isOwnAddress(address)) throw new Refusal("conflict", sentence("network.otherAddress", { address }));
    const key = keyOf(keep.key);
    const identity = await identityFor(key, [address], parts.now());
    const host = hostOf(address, wanted);
    const served = { host, origin: `https://${host}` };
    const known = ({ socket }: { socket: Parameters<typeof connections.belongsTo>[0] }, id: string) =>
      connections.belongsTo(socket, id);
    const heardOver = (token: string) => leaving?.goodbye.heard(token);
    const answer = createSite({ ...carried, served, joining, devices, known, changed, heardOver });
    const server = makeServer({ identity, connections, patience: parts.patience ?? usualPatience, answer });
    await listenOn(server, address, wanted).catch((error) => refuseFor(error, wanted));
    const url = `${served.origin}/`;
    return {
      server,
      address,
      port: wanted,
      url,
      shortForm: shortFormOf(key),
      kind: parts.kind(),
      dayId: current.id,
    };
  }

  async function turnOn(address: string, wanted: number): Promise<void> {
    if (turning) throw new Refusal("conflict", sentence("network.turning"));
    turning = true;
    try {
      await end();
      running = await begin(address, wanted);
      offered = wanted;
      devices.forgetOthers();
      keepSwitch({ address, dayId: running.dayId });
    } finally {
      turning = false;
    }
    // The day may have been closed while the certificate was made.
    lookAtDay();
    changed();
  }

  async function end(): Promise<void> {
    const servers = [running?.server, leaving?.server].filter((server) => server !== undefined);
    leaving?.goodbye.stop();
    running = null;
    leaving = null;
    joining.forget();
    if (servers.length === 0) return;
    const ended = servers.map(endServer);
    connections.endAll();
    await Promise.all(ended);
  }

  /** Devices that are there hear that the day is over, so that they delete what they keep; then nothing listens. */
  async function sayGoodbye(): Promise<void> {
    const was = running;
    const toHear = forgetDevices();
    if (was === null || toHear.length === 0) return turnOff();
    running = null;
    joining.forget();
    keepSwitch(null);
    connections.endAll();
    leaving = { server: was.server, goodbye: beginGoodbye(toHear, () => void end()) };
    changed();
  }

  async function turnOff(): Promise<void> {
    keepSwitch(null);
    await end();
    changed();
  }

  function lookAtDay(): void {
    if (running === null) return;
    if (running.kind !== parts.kind()) void turnOff();
    else if (day()?.id !== running.dayId) void sayGoodbye();
  }

  /** A disk that is full now must not undo what closed the day; they are forgotten when it is turned on again. */
  function forgetDevices(): readonly string[] {
    try {
      return devices.forgetOthers();
    } catch (error) {
      console.error("The devices of an earlier day could not be forgotten:", error);
      return [];
    }
  }

  return {
    view: () => ({
      on: running === null ? null : listeningOf(running),
      addresses: addressesHere(),
      port: offered,
      code: joining.code(),
      shutMs: joining.shutForMs(),
      asking: joining.asking(),
      devices: devices.list(),
    }),
    carry(given) {
      carried = given;
    },
    turnOn,
    turnOff,
    stop: end,
    async resume() {
      const { on } = readSwitch(keep);
      if (on === null) return;
      const same = parts.kind() === "own" && on.date === parts.today() && day()?.id === on.dayId;
      if (!same || !isOwnAddress(on.address)) {
        forgetDevices();
        return keepSwitch(null);
      }
      await turnOn(on.address, offered).catch((error: unknown) => {
        console.error("The network could not be turned on again:", error);
      });
    },
    takeKey(pem) {
      if (keep.key.read() === pem) return;
      keep.key.write(pem);
      void turnOff();
    },
    openJoining() {
      requireOn(running);
      joining.open();
    },
    closeJoining: joining.close,
    answer(askId, place) {
      const answered = joining.answer(askId, place === null ? { yes: false } : { yes: true, place });
      if (!answered) throw new Refusal("not-found", sentence("network.askedNoMore"));
    },
    isThere: devices.isThere,
    place(deviceId, place) {
      if (!devices.place(deviceId, place)) throw new Refusal("not-found", sentence("network.noDevice"));
      changed();
    },
    sendAway(deviceId) {
      devices.sendAway(deviceId);
      changed();
    },
    sendAllAway() {
      devices.sendAllAway();
      changed();
    },
    lookAtDay,
    connections: connections.count,
  };
}

function listeningOf({ address, port, url, shortForm }: Running): Listening {
  return { address, port, url, shortForm };
}
