import { trustNothing } from "../app/trusted.ts";

// All the rest is loaded after it: a module does things already while it is loaded.
trustNothing();
await import("./start-join.tsx");
