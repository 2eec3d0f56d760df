import { randomUUID } from "node:crypto";
import type { Bundle } from "../../domain/reference/bundle.ts";
import { bundleLimits } from "../../domain/reference/limits.ts";
import { tooBig } from "../../domain/reference/refused.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { Store } from "../../store/connection/store.ts";
import type { Desk } from "../door/desk.ts";

/** A bundle that was read and may be added, with the hash of its file. */
export interface BundleInHand {
  readonly sha256: string;
  readonly bundle: Bundle;
}

/** Most bundles in memory per store; one more drops the oldest. */
const most = 3;

/** Kept per store: a bundle uploaded in the demo is not there in the hall's own. */
const inHandOf = new WeakMap<Store, Map<string, BundleInHand>>();

/** Keeps a bundle in memory until newer ones come; returns its id. */
export function keepInHand(desk: Desk, bundle: BundleInHand): string {
  const inHand = inHandOf.get(desk.store) ?? new Map<string, BundleInHand>();
  inHandOf.set(desk.store, inHand);
  const id = randomUUID();
  inHand.set(id, bundle);
  for (const oldest of inHand.keys()) {
    if (inHand.size <= most) break;
    inHand.delete(oldest);
  }
  return id;
}

/** @throws Refusal `not-found` when it is no longer in memory. */
export function bundleInHand(desk: Desk, id: string): BundleInHand {
  const found = inHandOf.get(desk.store)?.get(id);
  if (found === undefined) throw new Refusal("not-found", sentence("reference.gone"));
  return found;
}

/**
 * Reads an uploaded file's bytes; over the limit it is not read to its end.
 * @throws Refusal `bad-input` when it is too big.
 */
export async function readBytes(stream: ReadableStream<Uint8Array>): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let length = 0;
  // Leaving the loop by a refusal cancels the stream.
  for await (const part of stream) {
    length += part.length;
    if (length > bundleLimits.bytes) throw tooBig();
    parts.push(part);
  }
  return new Uint8Array(Buffer.concat(parts));
}
