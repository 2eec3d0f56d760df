import { type ChildProcess, fork } from "node:child_process";
import { once } from "node:events";
import type { TestCode } from "../../electron/domain/tests/registry.ts";

export interface TableOrders {
  readonly folder: string;
  /** The built pages that it serves. */
  readonly pages: string;
  readonly port: number;
  readonly athletes: number;
  /** The one test that everybody takes; left out, all five. */
  readonly only?: TestCode;
}

export interface TableQuestion {
  readonly ask: "code" | "backup" | "rows" | "zero";
  /** The folder of a backup's second place. */
  readonly stick?: string;
  /** Of which heat it is asked when it was at 0, in ms of this machine's monotonic clock. */
  readonly heatId?: string;
}

export interface KeptRows {
  /** `stands`: 1, or 0 for what no longer counts. */
  readonly rows: readonly { readonly id: string; readonly athleteId: number; readonly stands: 0 | 1 }[];
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
  /** One question at a time: answers have no name. */
  let before: Promise<unknown> = Promise.resolve();
  return {
    ask<Answer>(question: TableQuestion) {
      const answer = before.then(() => {
        const next = heard(child);
        child.send(question);
        return next as Promise<Answer>;
      });
      before = answer.catch(() => undefined);
      return answer;
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
