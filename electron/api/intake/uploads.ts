import { randomUUID } from "node:crypto";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import { refuseTooBig } from "../../sheets/decode.ts";
import type { Store } from "../../store/connection/store.ts";
import type { Desk } from "../door/desk.ts";
import type { PlannedSheet } from "./sheet.ts";

/** An uploaded sheet that may be imported. */
export interface Upload {
  readonly bytes: Uint8Array;
  /** The rows not imported at the last look or import. */
  keptBack: Pick<PlannedSheet, "kind" | "headers" | "keptBack"> | null;
}

/** Most sheets in memory per store; one more drops the oldest. */
const most = 3;

/** Kept per store, not per desk: a sheet uploaded in the demo is not there in the hall's own store. */
const uploadsOf = new WeakMap<Store, Map<string, Upload>>();

/**
 * Keeps a sheet in memory until newer ones replace it; returns its id. A file over the limit is not read to its end.
 * @throws Refusal `bad-input` when it is too big.
 */
export async function keepUpload(desk: Desk, stream: ReadableStream<Uint8Array>): Promise<string> {
  const bytes = await readAll(stream);
  const uploads = uploadsOf.get(desk.store) ?? new Map<string, Upload>();
  uploadsOf.set(desk.store, uploads);
  const id = randomUUID();
  uploads.set(id, { bytes, keptBack: null });
  for (const oldest of uploads.keys()) {
    if (uploads.size <= most) break;
    uploads.delete(oldest);
  }
  return id;
}

/** @throws Refusal `not-found` when it is no longer in memory. */
export function uploadOf(desk: Desk, id: string): Upload {
  const upload = uploadsOf.get(desk.store)?.get(id);
  if (upload === undefined) throw new Refusal("not-found", sentence("sheets.gone"));
  return upload;
}

/** Drops the sheets in memory, which may contain an erased athlete. */
export function forgetUploads(desk: Desk): void {
  uploadsOf.delete(desk.store);
}

async function readAll(stream: ReadableStream<Uint8Array>): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let length = 0;
  // Leaving the loop by a refusal cancels the stream.
  for await (const part of stream) {
    length += part.length;
    refuseTooBig(length);
    parts.push(part);
  }
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}
