import type { Page } from "@playwright/test";
import { callDoor } from "../e2e/page.ts";
import { go, takeWhole } from "./take.ts";

interface Listed {
  readonly days: readonly {
    readonly id: number;
    readonly marks: readonly { readonly judges: readonly { readonly judge: string }[] }[];
  }[];
}

/** Takes a study of the newest day's push-ups with nobody, with three and with everybody read by a second judge. */
export async function takeStudy(desk: Page, prefix: string): Promise<void> {
  const { days } = await desk.evaluate(
    async () => (await (await fetch("/trpc/study.list")).json()).result.data as Listed,
  );
  const dayId = days[0]?.id;
  const series = [
    { from: "marks", dayId, judge: days[0]?.marks[0]?.judges[0]?.judge },
    { from: "judge", judge: "RS" },
  ];
  const plan = { id: crypto.randomUUID(), test: "push-up", variant: "full", kind: "judges", dayId, series };
  await callDoor(desk, "study.plan", { ...plan, aim: 20, by: "QA" });
  for (const athletes of [0, 3, 200]) {
    if (athletes > 0) await bringReadings(desk, plan.id, athletes);
    await go(desk, `/study/${plan.id}`);
    await takeWhole(desk, `${prefix}-study-${athletes}`);
  }
  await go(desk, `/print/study/${plan.id}/a4`);
  await takeWhole(desk, `${prefix}-study-paper`);
}

/** RS counts as the station did or up to four more, by a pattern that needs no chance. */
async function bringReadings(desk: Page, studyId: string, athletes: number): Promise<void> {
  const rows = Array.from({ length: athletes }, (_, index) => `${index + 1},${20 + ((index * 7) % 23)}`);
  const uploadId = await desk.evaluate(
    async (sheet) => {
      const headers = { "content-type": "application/octet-stream" };
      const answer = await fetch("/trpc/intake.upload", { method: "POST", headers, body: new Blob([sheet]) });
      return (await answer.json()).result.data.uploadId as string;
    },
    ["bib,mark", ...rows].join("\n"),
  );
  await callDoor(desk, "study.takeSheet", { uploadId, studyId, position: 2, by: "QA" });
}
