/** The steps in which a store is checked, in their order. */
export const checkSteps = ["bytes", "shape", "links", "marks"] as const;

/** How far a check is: of the bytes summed, of marks scored again, or 0 of 1 where a step can't tell. */
export interface CheckStep {
  readonly step: (typeof checkSteps)[number];
  readonly done: number;
  readonly total: number;
  /** True where the newest marks alone are scored again, because every byte is proved; left out: all are. */
  readonly fewMarks?: boolean;
}

/** What a step takes a MB of the file beside the others, and a mark: as measured on 500 MB with a million marks (ours). */
const effortOfMegabyte = { bytes: 1.2, shape: 10, links: 1.2 } as const;
const effortOfMark = 0.06;
const marksOfMegabyte = 2_000;

/**
 * Tells how much longer a check takes, in ms, by what it has done so far; null before it has begun.
 * @param at where it is now
 * @param bytes the file's length
 * @param sinceMs how long the check has run, and how long this step
 */
export function checkTimeLeft(
  at: CheckStep | null,
  bytes: number,
  sinceMs: { readonly begin: number; readonly step: number },
): number | null {
  if (at === null) return null;
  const megabytes = bytes / 1e6;
  const marks = at.step === "marks" ? at.total : at.fewMarks === true ? 0 : marksOfMegabyte * megabytes;
  const efforts = checkSteps.map((step) =>
    step === "marks" ? effortOfMark * marks : effortOfMegabyte[step] * megabytes,
  );
  const now = checkSteps.indexOf(at.step);
  const before = sum(efforts.slice(0, now));
  const own = efforts[now] ?? 0;
  const after = sum(efforts.slice(now + 1));
  // A step that can't tell how far it is takes as long as the earlier ones make likely.
  const speed = before > 0 && sinceMs.begin > sinceMs.step ? before / (sinceMs.begin - sinceMs.step) : 1;
  if (at.total <= 1) return Math.max(0, own / speed - sinceMs.step) + after / speed;
  const share = at.done / at.total;
  if (share === 0) return (own + after) / speed;
  const stepLeft = (sinceMs.step / share) * (1 - share);
  return stepLeft + (after * sinceMs.step) / (own * share || 1);
}

function sum(values: readonly number[]): number {
  return values.reduce((all, each) => all + each, 0);
}
