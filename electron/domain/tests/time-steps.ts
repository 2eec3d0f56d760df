/** Steps between ticks of a time axis that people count in, in seconds. */
export const timeSteps: readonly number[] = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1200, 1800, 3600];
