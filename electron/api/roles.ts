/** Who asks. The carrier decides it (the shell by the window's host); the API decides what each may do. */
export const roles = ["organiser", "check-in", "station", "board"] as const;
export type Role = (typeof roles)[number];
