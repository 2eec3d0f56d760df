import type { inferRouterOutputs } from "@trpc/server";
import type { AppRouter } from "../../../electron/api/router.ts";
import { localeOf } from "../../../electron/domain/languages.ts";

type Outputs = inferRouterOutputs<AppRouter>["bundle"];

/** What would leave, as the API shows it. */
export type Preview = NonNullable<Outputs["preview"]>;
/** What the organiser chooses: for whom, and whether an athlete's marks stay together. */
export type Wish = Pick<Preview, "kind"> & { readonly k: 5 | 11 };
export type LogEntry = Outputs["log"][number];

/** The first twelve digits of a hash in groups of four: enough to compare two by eye. */
export function shortHash(sha256: string): string {
  return (sha256.slice(0, 12).match(/.{4}/g) ?? []).join(" ");
}

/** An instant in the hall's own time: "14 Nov 2026, 16:05". */
export function writeMoment(at: string, language: string): string {
  const options = { dateStyle: "medium", timeStyle: "short" } as const;
  return new Intl.DateTimeFormat(localeOf(language), options).format(new Date(at));
}
