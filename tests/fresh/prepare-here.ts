import { prepareRuntime } from "../../electron/runtime/prepare.ts";

/** What every window test and every start does first, alone, so that several can be started at once. */
await prepareRuntime(console.log);
