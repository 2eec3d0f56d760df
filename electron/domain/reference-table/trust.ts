import { fold } from "../people/fold.ts";
import type { ReferenceTable } from "./table.ts";

/** A publisher whose table was added before, with the key that it was signed with. */
export interface KnownPublisher extends Pick<ReferenceTable, "publisher" | "publicKey"> {
  /** When their first table was added (ISO 8601). */
  readonly since: string;
}

/**
 * What is known of whoever signed a table. first: neither name nor key was seen before. known: the key was, perhaps
 * under another name, which whoever has a key may change. other-key: the name belongs to another key.
 */
export type Trust =
  | { readonly kind: "first" }
  | { readonly kind: "known"; readonly as: KnownPublisher }
  | { readonly kind: "other-key"; readonly as: KnownPublisher };

/** Returns what is known of whoever signed a table. Names are compared as people do, without case, accents and signs. */
export function trustIn(
  { publisher, publicKey }: Pick<ReferenceTable, "publisher" | "publicKey">,
  known: readonly KnownPublisher[],
): Trust {
  const name = fold(publisher);
  const ofName = known.find((each) => fold(each.publisher) === name);
  if (ofName !== undefined && ofName.publicKey !== publicKey) return { kind: "other-key", as: ofName };
  const as = known.find((each) => each.publicKey === publicKey);
  return as === undefined ? { kind: "first" } : { kind: "known", as };
}
