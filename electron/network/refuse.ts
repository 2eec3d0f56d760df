import { Refusal } from "../domain/refusal.ts";
import { sentence } from "../domain/words.ts";

/** Refuses what needs the switch on. @throws Refusal */
export function requireOn(running: object | null): void {
  if (running === null) throw new Refusal("conflict", sentence("network.off"));
}

/** Says why the system does not let us listen. @throws Refusal */
export function refuseFor(error: NodeJS.ErrnoException, port: number): never {
  if (error.code === "EADDRINUSE" || error.code === "EACCES") {
    throw new Refusal("conflict", sentence("network.portTaken", { port }));
  }
  console.error("The network could not be turned on:", error);
  throw new Refusal("unavailable", sentence("network.notListening"));
}
