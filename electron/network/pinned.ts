import { createHash } from "node:crypto";
import { Agent, type RequestOptions } from "node:https";
import type { Duplex } from "node:stream";
import { connect, type TLSSocket } from "node:tls";

/** Another key than the table's answered: nothing was sent to whoever has it. */
export class OtherKey extends Error {}

/** How long a table may take to show its key, in ms. */
const patienceMs = 5_000;

/** The table as a joined program knows it. */
export interface PinnedTable {
  /** IPv4 or IPv6. */
  readonly address: string;
  readonly port: number;
  /** Hexadecimal digits with which the SHA-256 of its public key begins: those that were typed, or all 64. */
  readonly key: string;
}

/**
 * Makes connections to one address only, TLS 1.3, and hands one on only after its other end has proved that it holds the
 * table's key: until then not a byte of a request is written. No authority vouches for a table, so none is asked.
 */
export class PinnedAgent extends Agent {
  readonly #table: PinnedTable;
  #proved: string | null = null;

  /** Returns the SHA-256 of the key that the other end of the newest connection proved to hold; null before the first. */
  readonly provedKey = (): string | null => this.#proved;

  constructor(table: PinnedTable) {
    super({ keepAlive: true, maxSockets: 32, maxFreeSockets: 4 });
    this.#table = table;
  }

  override createConnection(
    _options: RequestOptions,
    done: (error: Error | null, stream: Duplex) => void = () => undefined,
  ): undefined {
    const { address, port, key } = this.#table;
    // No session is ever resumed: each connection shows its key anew.
    const socket = connect({ host: address, port, minVersion: "TLSv1.3", rejectUnauthorized: false });
    socket.setTimeout(patienceMs, () => socket.destroy(new Error("The table takes too long.")));
    socket.once("error", (error) => done(error, socket));
    socket.once("secureConnect", () => {
      const hash = keyHashOf(socket);
      if (hash?.startsWith(key) !== true) {
        socket.destroy(new OtherKey("Another key than the table's answered."));
        return;
      }
      this.#proved = hash;
      socket.setTimeout(0);
      socket.removeAllListeners("timeout");
      socket.removeAllListeners("error");
      socket.setNoDelay(true);
      done(null, socket);
    });
  }
}

/** Returns the SHA-256 of the public key (SubjectPublicKeyInfo) of a new connection's other end, in hexadecimal digits. */
function keyHashOf(socket: TLSSocket): string | null {
  const certificate = socket.getPeerX509Certificate();
  if (certificate === undefined) return null;
  const spki = certificate.publicKey.export({ type: "spki", format: "der" });
  return createHash("sha256").update(spki).digest("hex");
}
