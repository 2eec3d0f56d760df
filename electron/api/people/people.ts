import { router } from "../trpc.ts";

export const people = router({});
