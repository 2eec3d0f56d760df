import type { Socket } from "node:net";

/** How many connections the server holds open at the same time. */
export interface ConnectionLimits {
  /** Of one device, and of one address from which no device has shown itself yet. */
  readonly each: number;
  /** In which no device has shown itself yet. */
  readonly unknown: number;
  readonly all: number;
}

export const usualLimits: ConnectionLimits = { each: 64, unknown: 256, all: 512 };

/** Counts open connections by whose they are, so that nobody keeps others out by opening many. */
export interface Connections {
  /** Counts a new connection; ends it at once where there are too many. */
  begin(socket: Socket): void;
  /** A request in the connection showed that it is this device's; false where the device has too many. */
  belongsTo(socket: Socket, deviceId: string): boolean;
  /** Ends all connections of a device. */
  end(deviceId: string): void;
  endAll(): void;
  count(): number;
}

interface Connection {
  readonly socket: Socket;
  owner: string;
}

const ofAddress = "address ";

export function createConnections(limits: ConnectionLimits): Connections {
  // By both ends: the encrypted socket of a request is another object than the one that was accepted.
  const open = new Map<string, Connection>();
  const countOf = (of: (owner: string) => boolean) =>
    [...open.values()].filter(({ owner }) => of(owner)).length;

  function tooMany(owner: string): boolean {
    return (
      open.size >= limits.all ||
      countOf((each) => each === owner) >= limits.each ||
      countOf((each) => each.startsWith(ofAddress)) >= limits.unknown
    );
  }

  return {
    begin(socket) {
      const owner = `${ofAddress}${socket.remoteAddress}`;
      if (tooMany(owner)) {
        socket.destroy();
        return;
      }
      const ends = endsOf(socket);
      open.set(ends, { socket, owner });
      socket.once("close", () => open.delete(ends));
    },
    belongsTo(socket, deviceId) {
      const found = open.get(endsOf(socket));
      if (found === undefined || found.owner === deviceId) return found !== undefined;
      if (countOf((owner) => owner === deviceId) >= limits.each) return false;
      found.owner = deviceId;
      return true;
    },
    end(deviceId) {
      for (const { socket, owner } of open.values()) if (owner === deviceId) socket.destroy();
    },
    endAll() {
      for (const { socket } of open.values()) socket.destroy();
    },
    count: () => open.size,
  };
}

function endsOf({ remoteAddress, remotePort }: Socket): string {
  return `${remoteAddress} ${remotePort}`;
}
