import { z } from "zod";
import type { TypedInvitation } from "../../../electron/domain/devices/invitation.ts";
import { tellTable } from "../../app/table.ts";

/** Longer than the shell waits for the table, in ms. */
const patienceWithKeyMs = 10_000;

/** What came of a code; `away`: no answer came. */
export type Asked =
  | { readonly outcome: "asked"; readonly ask: string }
  | { readonly outcome: "shut"; readonly waitMs: number }
  | { readonly outcome: "wrong" | "closed" | "full" | "unreadable" | "away" };

const askedSchema = z.discriminatedUnion("outcome", [
  z.object({ outcome: z.literal("asked"), ask: z.string() }),
  z.object({ outcome: z.literal("shut"), waitMs: z.number() }),
  z.object({ outcome: z.enum(["wrong", "closed", "full"]) }),
]);

/** Asks the table to let this device join. */
export async function askToJoin(code: string, name: string): Promise<Asked> {
  const answer = await tellTable("/join/ask", { code, name });
  if (answer === null) return { outcome: "away" };
  const read = askedSchema.safeParse(await answer.json().catch(() => null));
  return read.success ? read.data : { outcome: "unreadable" };
}

const heardSchema = z.object({ state: z.enum(["waiting", "yes", "no", "gone"]) });

/** What came of joining from the program: its own shell reads what was typed, and looks at the table's key. */
export type AskedTable =
  | Asked
  | { readonly outcome: "badAddress" | "badCode" | "badKey" | "otherKey" | "notHere" };

const askedTableSchema = z.union([
  askedSchema,
  z.object({
    outcome: z.enum(["badAddress", "badCode", "badKey", "otherKey", "notHere", "unreadable", "away"]),
  }),
]);

/** Asks the table at an address to let this laptop join, if its key begins as was typed. */
export async function askTable(typed: TypedInvitation & { readonly name: string }): Promise<AskedTable> {
  const answer = await tellTable("/join/ask", typed, patienceWithKeyMs);
  if (answer === null) return { outcome: "away" };
  const read = askedTableSchema.safeParse(await answer.json().catch(() => null));
  return read.success ? read.data : { outcome: "unreadable" };
}

/** Asks for the table's answer; `away`: none came now. */
export async function hearAnswer(ask: string): Promise<z.infer<typeof heardSchema>["state"] | "away"> {
  const answer = await tellTable("/join/wait", { ask });
  if (answer === null) return "away";
  const read = heardSchema.safeParse(await answer.json().catch(() => null));
  return read.success ? read.data.state : "away";
}
