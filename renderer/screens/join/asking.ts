import { z } from "zod";
import { tellTable } from "../../app/table.ts";

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

/** Asks for the table's answer; `away`: none came now. */
export async function hearAnswer(ask: string): Promise<z.infer<typeof heardSchema>["state"] | "away"> {
  const answer = await tellTable("/join/wait", { ask });
  if (answer === null) return "away";
  const read = heardSchema.safeParse(await answer.json().catch(() => null));
  return read.success ? read.data.state : "away";
}
