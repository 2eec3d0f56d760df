import { z } from "zod";
import { type Invitation, readInvitation } from "../domain/devices/invitation.ts";
import { deviceNameSchema, devicePlaceSchema } from "../domain/devices/place.ts";
import { tokenIn } from "./cookie.ts";
import {
  type KeptMembership,
  type MembershipKeep,
  readMembership,
  writeMembership,
} from "./membership-kept.ts";
import { OtherKey } from "./pinned.ts";
import { createTableClient, type TableClient } from "./table-client.ts";

/**
 * Why this program is no longer a device of the table: it was sent away, the day was closed, or a table that came back from
 * an earlier backup does not know it.
 */
type Farewell = z.infer<typeof whySchema>["why"] | "unknown";

/** How this program stands to a table. */
type MembershipState =
  | { readonly is: "apart" }
  | ({ readonly is: "joined" } & Pick<KeptMembership, "address" | "name" | "place">)
  | { readonly is: "over"; readonly why: Farewell };

/** This program as a device of another laptop's table: from joining to leaving, across restarts. */
export interface Membership {
  state(): MembershipState;
  /** True where the last connection met another key than the table's. */
  metOtherKey(): boolean;
  /**
   * Answers the desk's page, which asks a table to let this program join (`/join/ask`) and waits for the answer
   * (`/join/wait`); null for any other path.
   */
  answerDesk(path: string, request: Request): Promise<Response | null>;
  /** Answers the page of a device with what the table says; null for a path that is none of the table's. */
  answerDevice(path: string, request: Request): Promise<Response | null>;
}

interface MembershipParts {
  readonly keep: MembershipKeep;
  /** True while this program may join: the organiser is at it, and it is no table itself. */
  mayJoin(): boolean;
  /** Returns this laptop's own language. */
  language(): string;
  /** Called after it has joined, and after somebody let the table go: `left` where it was still a device of it. */
  changed(left: boolean): void;
}

const askSchema = z.strictObject({
  address: z.string().max(100),
  code: z.string().max(60),
  key: z.string().max(60),
  name: deviceNameSchema,
});
const waitSchema = z.strictObject({ ask: z.string().max(64) });
const heardSchema = z.object({ state: z.enum(["waiting", "yes", "no", "gone"]) });
const yesSchema = z.object({ state: z.literal("yes"), place: devicePlaceSchema });
const hereSchema = z.looseObject({ name: deviceNameSchema, place: devicePlaceSchema });
const whySchema = z.object({ why: z.enum(["sentAway", "closed"]) });

/** What the page hears of the first part that can't be right. */
const badPart = { address: "badAddress", code: "badCode", key: "badKey" } as const;

interface Asking {
  readonly invitation: Invitation;
  readonly name: string;
  readonly client: TableClient;
}

interface Joined {
  readonly kept: KeptMembership;
  readonly client: TableClient;
}

/** Reads what was kept. It connects to nothing before a page asks for the table. */
export function createMembership({ keep, mayJoin, language, changed }: MembershipParts): Membership {
  const kept = readMembership(keep);
  let joined: Joined | null = kept === null ? null : { kept, client: createTableClient(kept) };
  let asking: Asking | null = null;
  let farewell: Farewell | null = null;
  let otherKey = false;

  async function reached<Answer>(answer: Promise<Answer>): Promise<Answer> {
    try {
      const came = await answer;
      otherKey = false;
      return came;
    } catch (error) {
      if (error instanceof OtherKey) otherKey = true;
      throw error;
    }
  }

  function stopAsking(): void {
    asking?.client.end();
    asking = null;
  }

  async function ask(sent: unknown): Promise<Response> {
    const read = askSchema.safeParse(sent);
    if (!read.success) return told({ outcome: "unreadable" });
    const invitation = readInvitation(read.data);
    if ("wrong" in invitation) return told({ outcome: badPart[invitation.wrong] });
    stopAsking();
    const client = createTableClient(invitation);
    const { name } = read.data;
    asking = { invitation, name, client };
    try {
      const { body } = await client.tell("/join/ask", { code: invitation.code, name });
      return body === null ? told({ outcome: "unreadable" }) : told(body);
    } catch (error) {
      stopAsking();
      return told({ outcome: error instanceof OtherKey ? "otherKey" : "away" });
    }
  }

  async function hear(sent: unknown): Promise<Response> {
    const { ask: secret } = waitSchema.parse(sent);
    if (asking === null) return told({ state: "gone" });
    const { client, invitation, name } = asking;
    const answer = await client.tell("/join/wait", { ask: secret });
    const { state } = heardSchema.parse(answer.body);
    if (state === "no" || state === "gone") stopAsking();
    if (state !== "yes") return told({ state });
    const { place } = yesSchema.parse(answer.body);
    const token = tokenIn(answer.cookie);
    const keyHash = client.keyHash();
    if (token === null || keyHash === null) throw new Error("The table gave no token.");
    const { address, port } = invitation;
    settle({
      ...{ format: "tapeline-joined", version: 1, address, port, name, place, token },
      key: keyHash,
    });
    return told({ state });
  }

  function settle(now: KeptMembership): void {
    stopAsking();
    joined = { kept: now, client: createTableClient(now) };
    farewell = null;
    writeMembership(keep, now);
    changed(false);
  }

  function forget(): void {
    joined?.client.end();
    joined = null;
    writeMembership(keep, null);
  }

  /** Says to the page why it is no device any more, as the table did. */
  function parted(): Response {
    if (farewell === null || farewell === "unknown") return new Response(null, { status: 401 });
    return Response.json({ why: farewell }, { status: 410 });
  }

  /** A table that does not hear it waits a little longer, and then for nobody. */
  async function sayHeard({ client, kept: { token } }: Joined): Promise<void> {
    await client.tell("/device/heard", {}, token).catch(() => undefined);
  }

  async function here(request: Request): Promise<Response> {
    if (joined === null) return parted();
    const { client, kept: known } = joined;
    const word = (await request.json()) as object;
    const { status, body } = await reached(client.tell("/device/here", word, known.token));
    if (joined?.client !== client) return parted();
    if (status === 401 || status === 410) {
      // Its token is of no use to anybody.
      farewell = status === 401 ? "unknown" : whySchema.parse(body).why;
      if (farewell === "closed") await sayHeard(joined);
      forget();
      return parted();
    }
    if (status !== 200) return new Response(null, { status });
    const { place } = hereSchema.parse(body);
    if (JSON.stringify(place) !== JSON.stringify(known.place)) {
      joined = { client, kept: { ...known, place } };
      writeMembership(keep, joined.kept);
    }
    return told(body);
  }

  /** Lets the table go. It hears of it if it can be reached; this device forgets it in any case. */
  async function leave(): Promise<Response> {
    const was = joined;
    await was?.client.tell("/device/leave", {}, was.kept.token).catch(() => undefined);
    forget();
    farewell = null;
    changed(was !== null);
    return told({});
  }

  async function forward(request: Request): Promise<Response> {
    if (joined === null) return new Response(null, { status: 401 });
    return reached(joined.client.forward(request, joined.kept.token));
  }

  function state(): MembershipState {
    if (joined !== null) {
      const { address, name, place } = joined.kept;
      return { is: "joined", address, name, place };
    }
    return farewell === null ? { is: "apart" } : { is: "over", why: farewell };
  }

  return {
    state,
    metOtherKey: () => otherKey,
    async answerDesk(path, request) {
      if (path !== "/join/ask" && path !== "/join/wait") return null;
      if (request.method !== "POST") return new Response(null, { status: 405 });
      if (!mayJoin()) return told({ outcome: "notHere", state: "gone" });
      const sent: unknown = await request.json();
      return path === "/join/ask" ? ask(sent) : unreached(hear(sent));
    },
    async answerDevice(path, request) {
      if (path.startsWith("/trpc/")) return unreached(forward(request));
      if (path === "/device/kept") return told({ ...state(), otherKey, language: language() });
      // The shell has said so to the table itself: it alone had the token.
      if (path === "/device/heard") return told({});
      if (path !== "/device/here" && path !== "/device/leave") return null;
      if (request.method !== "POST") return new Response(null, { status: 405 });
      return path === "/device/here" ? unreached(here(request)) : leave();
    },
  };
}

/** To a page, a table that can't be reached is a network that can't: nobody knows what became of the request. */
function unreached(answer: Promise<Response>): Promise<Response> {
  return answer.catch(() => Response.error());
}

function told(body: unknown): Response {
  return Response.json(body);
}
