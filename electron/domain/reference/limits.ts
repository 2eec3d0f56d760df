/** What a bundle from elsewhere may hold at most: some twenty times a large day. More is a slip, or meant to do harm. */
export const bundleLimits = Object.freeze({
  /** Of the zip as it comes. */
  bytes: 8 * 1024 * 1024,
  entries: 16,
  /** Unpacked: one file, and all of them together. */
  entryBytes: 4 * 1024 * 1024,
  totalBytes: 6 * 1024 * 1024,
  jsonBytes: 1024 * 1024,
  jsonDepth: 12,
  rows: 20_000,
  /** Of what the organiser calls it. */
  originLength: 40,
});
