import { initTRPC, TRPCError } from "@trpc/server";
import { ZodError } from "zod";
import type { JoinedDevice } from "../../domain/devices/place.ts";
import type { Role } from "../../domain/lock/roles.ts";
import { Refusal, type RefusalCode } from "../../domain/refusal.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { Store } from "../../store/connection/store.ts";
import type { Desk } from "./desk.ts";
import { proceduresOfDevices } from "./device-rights.ts";
import { say } from "./words.ts";

/** The context of every procedure. @public declarations of all procedures name it */
export interface Context {
  readonly who: Role;
  /** The station's test; without it, or null, every station. */
  readonly station?: TestCode | null;
  /** The device on the network that asks; without it, or null, a window of this computer. */
  readonly device?: JoinedDevice | null;
  readonly desk: Desk;
}

const pingMs = 10_000;

const trpc = initTRPC.context<Context>().create({
  // A stream over a network says that it is there: what hears nothing for so long asks anew.
  sse: {
    ping: { enabled: true, intervalMs: pingMs },
    client: { reconnectAfterInactivityMs: 3 * pingMs },
  },
  errorFormatter({ shape, error }) {
    const told = sentenceOf(error);
    return { ...shape, message: say(told), data: { code: shape.data.code, sentence: told } };
  },
});

export const router = trpc.router;

const carried: Record<RefusalCode, TRPCError["code"]> = {
  "bad-input": "BAD_REQUEST",
  "not-found": "NOT_FOUND",
  conflict: "CONFLICT",
  forbidden: "FORBIDDEN",
  unavailable: "SERVICE_UNAVAILABLE",
};

/** Error codes of requests that never reached a procedure. */
const unreadable: readonly TRPCError["code"][] = [
  "BAD_REQUEST",
  "PARSE_ERROR",
  "METHOD_NOT_SUPPORTED",
  "UNSUPPORTED_MEDIA_TYPE",
];

/** Turns every error into a sentence; people get a code and that sentence, and no internals. */
function sentenceOf(error: TRPCError): Sentence {
  if (error.cause instanceof Refusal) return error.cause.sentence;
  if (error.cause instanceof ZodError) return sentence("door.badInput");
  if (error.code === "FORBIDDEN") return sentence("door.forbidden");
  if (unreadable.includes(error.code)) return sentence("door.badInput");
  if (error.code === "NOT_FOUND") return sentence("door.unknown");
  return sentence("door.failed");
}

/**
 * Makes a procedure that only these roles may call, with the desk as it is when the request comes ({@link heldDesk}).
 * No procedure exists without this, so the table of rights is the code, and none goes on in another store than it began
 * in. A procedure's refusal is sent under its own code.
 */
export function allow(...who: readonly Role[]) {
  return trpc.procedure.use(async ({ ctx, next, type, path }) => {
    const isAllowed = who.includes(ctx.who) && (isWindow(ctx.device) || proceduresOfDevices.has(path));
    if (!isAllowed) throw asCarried(new Refusal("forbidden", forbidden(ctx.who)));
    // A write counts as activity at the desk, from whatever input.
    if (type === "mutation" && ctx.who === "organiser") ctx.desk.lock.touch();
    const result = await next({ ctx: { ...ctx, desk: heldDesk(ctx.desk) } });
    if (!result.ok && result.error.cause instanceof Refusal) throw asCarried(result.error.cause);
    return result;
  });
}

function isWindow(device: Context["device"]): boolean {
  return device === undefined || device === null;
}

function forbidden(who: Role): Sentence {
  return who === "locked" ? sentence("door.locked") : sentence("door.forbidden");
}

function asCarried(refusal: Refusal): TRPCError {
  return new TRPCError({ code: carried[refusal.code], message: say(refusal.sentence), cause: refusal });
}

/**
 * Holds the desk for one request with the store that was in use when it came. A request that waits (for a long sheet, a
 * backup) must not go on in another store that was switched to meanwhile: it is refused. A switch by the request itself
 * is allowed.
 */
function heldDesk(desk: Desk): Desk {
  let { store, kind } = desk;

  function held(): Store {
    if (desk.store !== store) throw new Refusal("conflict", sentence("door.otherStore"));
    return store;
  }
  function holdAgain(): void {
    ({ store, kind } = desk);
  }
  const own: Pick<Desk, "use" | "replaceOwn"> = {
    use(wanted) {
      desk.use(wanted);
      holdAgain();
    },
    replaceOwn(work) {
      held();
      try {
        return desk.replaceOwn(work);
      } finally {
        holdAgain();
      }
    },
  };
  // Everything else is the desk's, read when needed.
  return Object.create(desk, {
    store: { get: held },
    kind: { get: () => kind },
    use: { value: own.use },
    replaceOwn: { value: own.replaceOwn },
  }) as Desk;
}
