/** Limits of a sheet. A league's roster has some hundreds of rows; more is a mistake, and would fill memory. */
export const sheetLimits = Object.freeze({
  bytes: 20 * 1024 * 1024,
  /** Unpacked size of a workbook's parts: 20,000 rows of 20 columns are about 30 MB of XML. */
  unpackedBytes: 64 * 1024 * 1024,
  /** Parts of a workbook, pictures among them. */
  entries: 2_000,
  rows: 20_000,
  /** Lines, including those inside quotation marks and empty ones between rows; empty ones at the end don't count. */
  lines: 100_000,
  columns: 200,
  /** Rows with unpaired quotation marks; with more of them, nothing after the first can be trusted. */
  brokenRows: 20,
});

/** Most rosters of one rehearsal: with past results and results as many sheets as a desk keeps in memory. */
export const mostRosters = 6;
