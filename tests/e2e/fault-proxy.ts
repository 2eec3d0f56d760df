import { connect, createServer, type Socket } from "node:net";

/** What happens between a device and the table. */
interface Fault {
  /** Ms by which every piece is late. */
  readonly delayMs?: number;
  /** Pieces are taken and never handed on, either way: connections stay half open. */
  readonly silent?: "both" | "answers";
}

/** Stands between a device and the table, on this machine alone. */
export interface FaultProxy {
  readonly port: number;
  /** From now on, for open connections too. */
  set(fault: Fault): void;
  /** Ends every connection at once, as when somebody walks out of reach. */
  cut(): void;
  close(): Promise<void>;
}

const address = "127.0.0.1";

/**
 * Listens on `port` and hands everything on to `to`. TLS goes through untouched, so that the table is who it says it is.
 */
export async function startFaultProxy(port: number, to: number): Promise<FaultProxy> {
  let fault: Fault = {};
  const open = new Set<Socket>();
  function hand(from: Socket, on: Socket, way: "asks" | "answers"): void {
    from.on("data", (piece) => {
      if (fault.silent === "both" || fault.silent === way) return;
      setTimeout(() => on.writable && on.write(piece), fault.delayMs ?? 0);
    });
    from.on("error", () => undefined);
    from.on("close", () => on.destroy());
    open.add(from);
    from.on("close", () => open.delete(from));
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
    async close() {
      cut();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
