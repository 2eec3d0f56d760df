import { prepareRuntime } from "../../electron/runtime/prepare.ts";

/** Makes the machine ready once, before the first worker starts: on a new one all of them would begin with it at once. */
export default async function prepare(): Promise<void> {
  await prepareRuntime(console.log);
}
