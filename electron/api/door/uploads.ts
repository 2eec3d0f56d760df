import { randomUUID } from "node:crypto";
import { Refusal } from "../../domain/refusal.ts";
import type { Sentence } from "../../domain/words.ts";
import type { Store } from "../../store/connection/store.ts";
import type { Desk } from "./desk.ts";

/**
 * Makes a memory of uploads until newer ones come, per store and not per desk: one of the demo is not there in the
 * hall's own store. One more than `most` drops the oldest.
 */
export function createUploads<Item>(gone: Sentence, most = 3) {
  const uploadsOf = new WeakMap<Store, Map<string, Item>>();
  return {
    /** Keeps an upload; returns its id. */
    keep({ store }: Desk, item: Item): string {
      const uploads = uploadsOf.get(store) ?? new Map<string, Item>();
      uploadsOf.set(store, uploads);
      const id = randomUUID();
      uploads.set(id, item);
      for (const oldest of uploads.keys()) {
        if (uploads.size <= most) break;
        uploads.delete(oldest);
      }
      return id;
    },
    /** @throws Refusal `not-found` when it is no longer in memory. */
    find({ store }: Desk, id: string): Item {
      const found = uploadsOf.get(store)?.get(id);
      if (found === undefined) throw new Refusal("not-found", gone);
      return found;
    },
    /** Drops them all: they may contain an erased athlete. */
    forget({ store }: Desk): void {
      uploadsOf.delete(store);
    },
  };
}

/** Reads an uploaded file's bytes; not to its end when `refuseTooBig`, called with the length so far, throws. */
export async function readUpload(
  stream: ReadableStream<Uint8Array>,
  refuseTooBig: (bytes: number) => void,
): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let length = 0;
  // Leaving the loop by a refusal cancels the stream.
  for await (const part of stream) {
    length += part.length;
    refuseTooBig(length);
    parts.push(part);
  }
  return new Uint8Array(Buffer.concat(parts));
}
