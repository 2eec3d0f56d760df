/** Limits of a bundle from elsewhere: some twenty times a large day. More is a mistake or an attack. */
export const bundleLimits = Object.freeze({
  /** Size of the zip. */
  bytes: 8 * 1024 * 1024,
  entries: 16,
  /** Unpacked size of one file, and of all together. */
  entryBytes: 4 * 1024 * 1024,
  totalBytes: 6 * 1024 * 1024,
  jsonBytes: 1024 * 1024,
  jsonDepth: 12,
  rows: 20_000,
  /** Length of the organiser's name for its origin. */
  originLength: 40,
});
