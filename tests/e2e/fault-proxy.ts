import { connect, createServer, type Socket } from "node:net";
import { setTimeout as wait } from "node:timers/promises";

/** From the device to the table, and back. */
type Way = "asks" | "answers";

/** What happens between a device and the table. */
interface Fault {
  /** Ms by which every piece is late, both ways or each. */
  readonly delayMs?: number | Readonly<Record<Way, number>>;
  /** Pieces are taken and never handed on, either way: connections stay half open. */
  readonly silent?: "both" | Way;
  /** Up to so many ms more for each piece, at random; pieces stay in order. */
  readonly jitterMs?: number;
  /** Bytes that go on in 20 ms; left out, all at once. */
  readonly slowBytes?: number;
  /** Pieces wait until this ends, as under a lost radio link that comes back. */
  readonly held?: boolean;
}

/** Stands between a device and the table, on this machine alone. */
export interface FaultProxy {
  readonly port: number;
  /** From now on, for open connections too. */
  set(fault: Fault): void;
  /** Ends every connection at once, as when somebody walks out of reach. */
  cut(): void;
  /** Leaves every open connection half open for good: nothing goes through any more, and neither side is told. */
  abandon(): void;
  close(): Promise<void>;
}

const address = "127.0.0.1";

/**
 * Listens on `port` and hands everything on to `to`. TLS goes through untouched, so that the table is who it says it is.
 */
export async function startFaultProxy(port: number, to: number): Promise<FaultProxy> {
  let fault: Fault = {};
  const open = new Set<Socket>();
  const abandoned = new WeakSet<Socket>();
  function hand(from: Socket, on: Socket, way: Way): void {
    let before: Promise<void> = Promise.resolve();
    from.on("data", (piece) => {
      if (fault.silent === "both" || fault.silent === way || abandoned.has(from)) return;
      const { delayMs = 0, jitterMs = 0 } = fault;
      const own = typeof delayMs === "number" ? delayMs : delayMs[way];
      const late = wait(own + Math.random() * jitterMs);
      before = before.then(() => late).then(() => handOn(piece, on));
    });
    from.on("error", () => undefined);
    from.on("close", () => on.destroy());
    open.add(from);
    from.on("close", () => open.delete(from));
  }
  /** Hands a piece on at once, or in small parts while the other side reads slowly. */
  async function handOn(piece: Buffer, on: Socket): Promise<void> {
    while (fault.held === true) await wait(10);
    const { slowBytes = piece.length } = fault;
    for (let from = 0; from < piece.length; from += slowBytes) {
      if (from > 0) await wait(20);
      if (on.writable) on.write(piece.subarray(from, from + slowBytes));
    }
  }
  const server = createServer((device) => {
    const table = connect({ host: address, port: to });
    hand(device, table, "asks");
    hand(table, device, "answers");
  });
  await new Promise<void>((resolve) => server.listen(port, address, resolve));
  function cut(): void {
    for (const socket of open) socket.destroy();
  }
  return {
    port,
    set(next) {
      fault = next;
    },
    cut,
    abandon() {
      for (const socket of open) abandoned.add(socket);
    },
    async close() {
      cut();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
