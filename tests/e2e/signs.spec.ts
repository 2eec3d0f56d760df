import { expect, type Page } from "@playwright/test";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { test } from "./fixture.ts";

/** Figures that sets of signs elsewhere are made of, as large as the box of a sign (48 × 48) allows. */
const plain: readonly (readonly [name: string, outline: string])[] = [
  ["square", "M4 4h40v40H4z"],
  ["triangle", "M24 1 47.5 45H.5z"],
  ["diamond", "M24 0 48 24 24 48 0 24z"],
  ["circle", "M24 1a23 23 0 1 0 0 46a23 23 0 1 0 0-46z"],
];

type Figure = readonly [name: string, ...paths: readonly string[]];

/** The signs on the first screen: the outline of each, and what is cut out of it. */
async function drawnSigns(desk: Page): Promise<readonly Figure[]> {
  const found: Figure[] = [];
  for (const code of testCodes) {
    const sign = desk.locator(`main [data-test="${code}"] svg`).first();
    const paths = await sign
      .locator("path")
      .evaluateAll((all) => all.map((path) => path.getAttribute("d") ?? ""));
    found.push([code, ...paths]);
  }
  return found;
}

/** How much of what two figures cover they both cover, counted by the pixel. */
function overlap(desk: Page, one: Figure, other: Figure): Promise<number> {
  return desk.evaluate(
    (figures) => {
      const [first, second] = figures.map(([, ...paths]) => {
        const canvas = Object.assign(document.createElement("canvas"), { width: 48, height: 48 });
        const pen = canvas.getContext("2d");
        pen?.fill(new Path2D(paths.join("")), "evenodd");
        return [...(pen?.getImageData(0, 0, 48, 48).data ?? [])].filter((_byte, index) => index % 4 === 3);
      });
      const covers = first?.map((alpha, index) => [alpha > 127, (second?.[index] ?? 0) > 127] as const) ?? [];
      const either = covers.filter(([a, b]) => a || b).length;
      return covers.filter(([a, b]) => a && b).length / either;
    },
    [one, other] as const,
  );
}

// The bar is our own, a little above what the taped cross shares with a circle round it (four fifths).
test("no test's sign is a plain figure, and no two are alike", async ({ tapeline }) => {
  const { desk } = tapeline;
  const signs = await drawnSigns(desk);
  expect(signs).toHaveLength(testCodes.length);
  for (const [index, sign] of signs.entries()) {
    expect(await overlap(desk, sign, sign)).toBe(1);
    for (const other of [...plain, ...signs.slice(index + 1)]) {
      expect.soft(await overlap(desk, sign, other), `${sign[0]} and ${other[0]}`).toBeLessThan(0.85);
    }
  }
});
