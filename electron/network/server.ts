import type { IncomingMessage, ServerResponse } from "node:http";
import { createServer, type Server } from "node:https";
import type { Socket } from "node:net";
import type { Connections } from "./connections.ts";
import type { Identity } from "./identity.ts";

/** How long the server waits for whoever connects, in ms. */
export interface Patience {
  /** For the whole of the TLS handshake. */
  readonly handshake: number;
  /** For all headers of a request. */
  readonly headers: number;
  /** For a whole request, with its body. */
  readonly request: number;
  /** For the next request in a connection. */
  readonly idle: number;
}

export const usualPatience: Patience = { handshake: 5_000, headers: 5_000, request: 20_000, idle: 10_000 };

/** Longest headers of a request, in bytes; its address counts. */
const mostHeaderBytes = 16 * 1024;
const mostHeaders = 64;

interface ServerParts {
  readonly identity: Identity;
  readonly connections: Connections;
  readonly patience: Patience;
  answer(request: IncomingMessage, response: ServerResponse): Promise<void>;
}

/** Makes the server: HTTP/1.1 over TLS 1.3, and nothing else in a connection. It does not listen yet. */
export function makeServer({ identity, connections, patience, answer }: ServerParts): Server {
  const server = createServer(
    {
      key: identity.key,
      cert: identity.certificate,
      minVersion: "TLSv1.3",
      handshakeTimeout: patience.handshake,
      headersTimeout: patience.headers,
      requestTimeout: patience.request,
      keepAliveTimeout: patience.idle,
      connectionsCheckingInterval: Math.min(1_000, patience.headers),
      maxHeaderSize: mostHeaderBytes,
      insecureHTTPParser: false,
      // Our own refusal has our headers.
      requireHostHeader: false,
      // Finds what went away without a word, a phone out of reach, when the system asks and nobody answers.
      keepAlive: true,
      // Two small packets must not wait for each other: that is 40 ms of every tap.
      noDelay: true,
      keepAliveInitialDelay: 10_000,
    },
    (request, response) => void answer(request, response),
  );
  server.maxHeadersCount = mostHeaders;
  // Before the handshake: that is what costs.
  server.prependListener("connection", (socket: Socket) => connections.begin(socket));
  // Nothing is answered that is no request: not why, and not by what.
  for (const event of ["clientError", "tlsClientError"] as const) {
    server.on(event, (_error: Error, socket: Socket) => void socket.destroy());
  }
  for (const event of ["upgrade", "connect"] as const) {
    server.on(event, (_request: IncomingMessage, socket: Socket) => void socket.destroy());
  }
  for (const event of ["checkContinue", "checkExpectation"] as const) {
    server.on(event, (_request: IncomingMessage, response: ServerResponse) => {
      response.writeHead(417, { connection: "close" }).end();
    });
  }
  return server;
}

/** Starts to listen on exactly that address. Rejects with the system's error. */
export function listenOn(server: Server, address: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen({ host: address, port, exclusive: true }, () => {
      server.off("error", reject);
      resolve();
    });
  });
}

/** Ends the server and every connection to it; resolves when nothing listens any more. */
export function endServer(server: Server): Promise<void> {
  const ended = new Promise<void>((resolve) => server.close(() => resolve()));
  server.closeAllConnections();
  return ended;
}
