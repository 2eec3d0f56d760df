import { crc32, deflateRawSync } from "node:zlib";

/** One entry of a zip, told true or not. */
export interface RawEntry {
  readonly name: string;
  /** As it lies in the zip. */
  readonly data: Uint8Array;
  /** What the headers say of it unpacked. */
  readonly bytes: number;
  readonly crc: number;
  readonly method: 0 | 8;
  readonly flags?: number;
  /** Where the directory says it begins; by default where it does. */
  readonly at?: number;
}

/** An entry that is as it says. */
export function honest(name: string, content: Uint8Array | string, method: 0 | 8 = 0): RawEntry {
  const bytes = typeof content === "string" ? Buffer.from(content) : content;
  const data = method === 0 ? bytes : deflateRawSync(bytes);
  return { name, data, bytes: bytes.length, crc: crc32(bytes), method };
}

/** A zip written field by field (APPNOTE 6.3.10, section 4.3), so that any field can lie. */
export function rawZip(entries: readonly RawEntry[]): Uint8Array {
  const parts: Buffer[] = [];
  const directory: Buffer[] = [];
  let at = 0;
  for (const entry of entries) {
    const name = Buffer.from(entry.name, "latin1");
    const local = Buffer.concat([header(0x04034b50, entry, name.length), name, entry.data]);
    directory.push(central(entry, name, entry.at ?? at));
    parts.push(local);
    at += local.length;
  }
  const records = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(records.length, 12);
  end.writeUInt32LE(at, 16);
  return new Uint8Array(Buffer.concat([...parts, records, end]));
}

function header(signature: number, { flags = 0, method, crc, data, bytes }: RawEntry, nameLength: number) {
  const buffer = Buffer.alloc(30);
  buffer.writeUInt32LE(signature, 0);
  buffer.writeUInt16LE(20, 4);
  buffer.writeUInt16LE(flags, 6);
  buffer.writeUInt16LE(method, 8);
  buffer.writeUInt32LE(crc, 14);
  buffer.writeUInt32LE(data.length, 18);
  buffer.writeUInt32LE(bytes, 22);
  buffer.writeUInt16LE(nameLength, 26);
  return buffer;
}

function central(entry: RawEntry, name: Buffer, at: number): Buffer {
  const buffer = Buffer.alloc(46);
  const { flags = 0, method, crc, data, bytes } = entry;
  buffer.writeUInt32LE(0x02014b50, 0);
  buffer.writeUInt16LE(20, 6);
  buffer.writeUInt16LE(flags, 8);
  buffer.writeUInt16LE(method, 10);
  buffer.writeUInt32LE(crc, 16);
  buffer.writeUInt32LE(data.length, 20);
  buffer.writeUInt32LE(bytes, 24);
  buffer.writeUInt16LE(name.length, 28);
  buffer.writeUInt32LE(at, 42);
  return Buffer.concat([buffer, name]);
}

/** One gigabyte of zeros, deflated: about a megabyte, without ever having been there whole. */
export function gigabyteOfZeros(): Uint8Array {
  const megabytes = 16;
  // Flushed so that it ends on a whole byte and refers to nothing before it: such pieces can be put one after another.
  const piece = deflateRawSync(Buffer.alloc(megabytes * 1024 * 1024), { finishFlush: 3 });
  const last = Buffer.from([0x03, 0x00]);
  return new Uint8Array(Buffer.concat([...Array.from({ length: 1024 / megabytes }, () => piece), last]));
}
