import { crc32, deflateSync } from "node:zlib";

/** What a screen shows: width and height in pixels, then red, green and blue of each, row by row. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly colours: Buffer;
}

/**
 * Reads the picture that Xvfb keeps in a file (`-fbdir`). Source: X11/XWDFile.h, version 7: 25 numbers of 32 bits, the
 * highest byte first, then the window's name and the colour map, then the pixels.
 */
export function readScreen(file: Buffer): Picture {
  const [headerSize = 0, version, , , width = 0, height = 0] = numbers(file);
  const [bits, bytesPerLine = 0] = numbers(file).slice(11);
  const colourCount = numbers(file)[19] ?? 0;
  if (version !== 7 || bits !== 32) throw new Error("The screen's file is not as Xvfb writes it.");
  const start = headerSize + colourCount * 12;
  const colours = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const [from, to] = [start + y * bytesPerLine + x * 4, (y * width + x) * 3];
      // Blue, green, red, nothing.
      colours.writeUIntBE(file.readUIntLE(from, 3), to, 3);
    }
  }
  return { width, height, colours };
}

function numbers(file: Buffer): number[] {
  return Array.from({ length: 25 }, (_, index) => file.readUInt32BE(index * 4));
}

/** How many colours there are in the picture. */
export function colourCount({ colours }: Picture): number {
  const seen = new Set<number>();
  for (let at = 0; at < colours.length; at += 3) seen.add(colours.readUIntBE(at, 3));
  return seen.size;
}

/** The picture as a PNG file. Source: W3C, Portable Network Graphics, 5 (structure) and 11.2 (chunks). */
export function pngOf({ width, height, colours }: Picture): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  // Eight bits a sample, three samples a pixel.
  header.writeUInt16BE(0x0802, 8);
  const rows = Array.from({ length: height }, (_, y) => [
    Buffer.of(0),
    colours.subarray(y * width * 3, (y + 1) * width * 3),
  ]);
  const data = deflateSync(Buffer.concat(rows.flat()));
  const signature = Buffer.from("89504e470d0a1a0a", "hex");
  return Buffer.concat([signature, chunk("IHDR", header), chunk("IDAT", data), chunk("IEND", Buffer.of())]);
}

function chunk(kind: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(kind, "latin1"), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}
