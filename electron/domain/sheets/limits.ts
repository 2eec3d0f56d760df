/** What a sheet may hold at most. A league's roster has some hundreds of rows; more is a slip, and would fill memory. */
export const sheetLimits = Object.freeze({
  bytes: 20 * 1024 * 1024,
  rows: 20_000,
  /** Lines, with those inside quotation marks and the blank ones between rows; blank ones at the end don't count. */
  lines: 100_000,
  columns: 200,
  /** Rows whose quotation marks don't pair up; more of them and nothing after the first can be trusted. */
  brokenRows: 20,
});
