/**
 * Hours of sleep gained under two drugs by ten patients, a pair each (Student 1908, Biometrika 6; as R carries them in
 * `sleep`, from memory).
 */
export const sleep = [
  [0.7, 1.9],
  [-1.6, 0.8],
  [-0.2, 1.1],
  [-1.2, 0.1],
  [-0.1, -0.1],
  [3.4, 4.4],
  [3.7, 5.5],
  [0.8, 1.6],
  [0, 4.6],
  [2, 3.4],
] as const;
