/**
 * Flow shops of 20 jobs and 5 machines by the generator of Taillard 1993, Benchmarks for basic scheduling problems, European
 * Journal of Operational Research 64(2): seeds, best makespans and bounds as published; NEH's makespans and the sums worked out
 * independently.
 */
export const flowShops = [
  { name: "ta001", seed: 873654221, sum: 5153, best: 1278, bound: 1232, insertion: 1286, listed: 1448 },
  { name: "ta002", seed: 379008056, sum: 5196, best: 1359, bound: 1290, insertion: 1365, listed: 1545 },
  { name: "ta003", seed: 1866992158, sum: 4605, best: 1081, bound: 1073, insertion: 1159, listed: 1597 },
  { name: "ta004", seed: 216771124, sum: 5636, best: 1293, bound: 1268, insertion: 1325, listed: 1754 },
  { name: "ta005", seed: 495070989, sum: 4968, best: 1235, bound: 1198, insertion: 1305, listed: 1431 },
  { name: "ta006", seed: 402959317, sum: 5055, best: 1195, bound: 1180, insertion: 1228, listed: 1616 },
  { name: "ta007", seed: 1369363414, sum: 4948, best: 1234, bound: 1226, insertion: 1278, listed: 1528 },
  { name: "ta008", seed: 2021925980, sum: 5231, best: 1206, bound: 1170, insertion: 1223, listed: 1428 },
  { name: "ta009", seed: 573109518, sum: 5242, best: 1230, bound: 1206, insertion: 1291, listed: 1468 },
  { name: "ta010", seed: 88325120, sum: 4777, best: 1108, bound: 1082, insertion: 1151, listed: 1404 },
] as const;

/** Orders that reach the best, by number from 1: that it can be reached. That nothing is below it is from the literature. */
export const bestOrders: Readonly<Record<string, readonly number[]>> = {
  ta001: [11, 9, 15, 3, 8, 6, 5, 19, 13, 4, 17, 18, 7, 16, 1, 2, 14, 10, 20, 12],
  ta002: [6, 10, 17, 7, 19, 15, 3, 12, 13, 20, 11, 16, 14, 1, 8, 9, 4, 18, 5, 2],
  ta003: [3, 4, 16, 14, 13, 19, 18, 20, 7, 1, 5, 10, 12, 11, 17, 9, 6, 8, 15, 2],
  ta004: [13, 17, 19, 9, 16, 11, 10, 7, 12, 15, 1, 5, 20, 2, 4, 8, 6, 14, 3, 18],
  ta005: [3, 5, 12, 19, 13, 9, 17, 16, 4, 6, 2, 10, 11, 15, 14, 7, 18, 1, 20, 8],
  ta006: [11, 14, 13, 17, 6, 7, 12, 15, 20, 16, 19, 2, 1, 9, 4, 18, 10, 8, 5, 3],
  ta007: [10, 2, 13, 1, 19, 17, 16, 20, 15, 3, 8, 4, 11, 5, 6, 12, 9, 14, 7, 18],
  ta008: [17, 2, 16, 9, 14, 4, 12, 7, 8, 6, 19, 15, 13, 10, 1, 20, 5, 3, 18, 11],
  ta009: [4, 12, 10, 2, 8, 1, 20, 16, 17, 11, 7, 6, 13, 19, 18, 3, 15, 14, 9, 5],
  ta010: [11, 7, 6, 16, 1, 19, 3, 14, 8, 10, 2, 18, 13, 12, 15, 5, 20, 17, 4, 9],
};

/** NEH's order of the first, where the first of equal places is taken. */
export const insertedFirst = [3, 17, 9, 8, 15, 14, 11, 16, 13, 19, 6, 4, 5, 18, 1, 2, 10, 7, 20, 12];

/** Returns the times of 20 jobs on 5 machines, a row a job. The generator fills one machine after another. */
export function rowsOf(seed: number): number[][] {
  let state = seed;
  const rows = Array.from({ length: 20 }, () => [0, 0, 0, 0, 0]);
  for (let machine = 0; machine < 5; machine += 1) {
    for (const row of rows) {
      const part = Math.floor(state / 127_773);
      state = 16_807 * (state % 127_773) - part * 2_836;
      if (state < 0) state += 2 ** 31 - 1;
      row[machine] = 1 + Math.floor((99 * state) / (2 ** 31 - 1));
    }
  }
  return rows;
}
