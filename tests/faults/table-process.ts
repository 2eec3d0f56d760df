import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";

export interface TableOrders {
  readonly folder: string;
  /** The built pages that it serves. */
  readonly pages: string;
  readonly port: number;
  readonly athletes: number;
}

export interface TableQuestion {
  readonly ask: "code" | "backup" | "rows";
  /** The folder of a backup's second place. */
  readonly stick?: string;
}

export interface KeptRows {
  readonly rows: readonly { readonly id: string; readonly athleteId: number }[];
  readonly marks: readonly object[];
}

/** A table that runs in another process. */
export interface TableProcess {
  ask<Answer>(question: TableQuestion): Promise<Answer>;
  /** Ends it as a lost battery would. */
  kill(): Promise<void>;
}

const program = new URL("hall-table.ts", import.meta.url).pathname;

/** Starts a table and resolves once it listens. */
export async function startTable(orders: TableOrders): Promise<TableProcess> {
  const child = fork(program, [JSON.stringify(orders)], { stdio: ["ignore", "inherit", "inherit", "ipc"] });
  await heard(child);
  return {
    async ask<Answer>(question: TableQuestion) {
      const answer = heard(child);
      child.send(question);
      return (await answer) as Answer;
    },
    async kill() {
      const gone = once(child, "exit");
      child.kill("SIGKILL");
      await gone;
    },
  };
}

/** Returns what the table says next. @throws when it ends before */
function heard(child: ChildProcess): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const ended = () => reject(new Error("The table ended."));
    child.once("exit", ended);
    child.once("message", (said: { readonly answer: unknown }) => {
      child.off("exit", ended);
      resolve(said.answer);
    });
  });
}
