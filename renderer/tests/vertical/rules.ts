import { type VerticalParameters, vertical } from "../../../electron/domain/tests/vertical/protocol.ts";
import { completeValue } from "../example.ts";
import type { SheetLines, Texts } from "../face.ts";

type Translate = Texts<"vertical">;

export function lines(t: Translate, { trials }: VerticalParameters): SheetLines {
  return {
    setUp: [t("sheet.setUp.tape"), t("sheet.setUp.floor")],
    run: [
      t("sheet.run.reach"),
      t("sheet.run.jump"),
      t("sheet.run.trials", { count: trials }),
      t("sheet.run.note"),
    ],
    form: [t("sheet.form.zero")],
  };
}

export function example(t: Translate, parameters: VerticalParameters): readonly string[] {
  const standingReach = 2190;
  const touches = [2590, 2625, 2610, 2600, 2620, 2580, 2615, 2605, 2595, 2585].slice(0, parameters.trials);
  const attempts = touches.map((touchReach) => ({ standingReach, touchReach }));
  const value = completeValue(vertical.score(parameters, attempts));
  const values = {
    reach: standingReach / 10,
    touches: touches.map((touch) => touch / 10).join("; "),
    best: Math.max(...touches) / 10,
    mark: value / 10,
  };
  return [t("sheet.example", values)];
}
