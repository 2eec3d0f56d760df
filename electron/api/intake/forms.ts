import { createHash } from "node:crypto";
import type { Mapping } from "../../sheets/headers.ts";
import { plainHeader } from "../../sheets/plain.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { columnsOfForm, keepForm } from "../../store/tables/sheet-forms.ts";

/** The form of a sheet: a league sends the same headers each time. */
function formOf(kind: string, headers: readonly string[]): string {
  return createHash("sha256")
    .update([kind, ...headers.map(plainHeader)].join("\n"))
    .digest("hex");
}

/** Which header stood for which field when a sheet of that form was last imported; empty: the headers said it all. */
export function rememberedMapping(db: ReadableDb, kind: string, headers: readonly string[]): Mapping {
  const columns = columnsOfForm(db, formOf(kind, headers)) ?? {};
  return Object.fromEntries(
    Object.entries(columns).flatMap(([field, column]) => {
      const header = headers[column];
      return header === undefined ? [] : [[field, header]];
    }),
  );
}

/** Keeps which column stands for which field, where a person said so. */
export function rememberMapping(
  db: WritableDb,
  kind: string,
  headers: readonly string[],
  mapping: Mapping,
): void {
  const columns = Object.entries(mapping).map(([field, header]) => [field, headers.indexOf(header)] as const);
  const known = columns.filter(([, column]) => column >= 0);
  if (known.length > 0) keepForm(db, formOf(kind, headers), Object.fromEntries(known));
}
