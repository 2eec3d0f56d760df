import { beforeEach, describe, expect, test } from "vitest";
import { refusalOf, type TestDesk, testDesk } from "./desk.ts";
import { addPeople, answersOf } from "./people-of-a-day.ts";

let made: TestDesk;
beforeEach(() => {
  made = testDesk();
});
const day = () => made.as("organiser").day;

/** The desk's clock says 14 November 2026. */
const wrongly = { date: "2036-12-06", title: "Winter testing" };

describe("age is judged by the day on which people stand there", () => {
  test("a minor is asked about in a day that is dated ten years off", async () => {
    const { dayId } = await day().create({ ...wrongly, sure: true });
    await day().open({ sure: true });
    const [kid = 0] = addPeople(made, [{ league: "North Quay", name: "Kid Dynamo", birthYear: 2012 }], dayId);
    const table = made.as("check-in").checkIn;
    expect((await refusalOf(table.admit(answersOf(kid)))).key).toBe("checkIn.guardian");
    expect(await table.person({ athleteId: kid })).toMatchObject({ mayBeUnder18: true });
    const { athleteId: _, ...answers } = answersOf(0);
    const walkUp = { league: "North Quay", name: "Walk Up", number: "", ...answers, birthYear: 2011 };
    expect((await refusalOf(table.walkUp(walkUp))).key).toBe("checkIn.guardian");
  });
});

describe("a date that is not near today", () => {
  test.each(["2026-11-11", "2026-11-17", "2036-12-06", "2016-11-14"])(
    "%s is held until somebody says that it is meant, when the day is made and again when it is opened",
    async (date) => {
      expect((await refusalOf(day().create({ date, title: "Far" }))).key).toBe("dayPlan.farAway");
      expect((await day().current()).day).toBeNull();
      await day().create({ date, title: "Far", sure: true });
      expect((await refusalOf(day().open())).key).toBe("dayPlan.farAway");
      expect((await day().current()).day?.state).toBe("planned");
      await day().open({ sure: true });
      expect((await day().current()).day).toMatchObject({ state: "open", heldOn: "2026-11-14" });
    },
  );

  test.each(["2026-11-12", "2026-11-14", "2026-11-16"])("%s is near, and nothing is asked", async (date) => {
    await day().create({ date, title: "Near" });
    await day().open();
    expect((await day().current()).day?.state).toBe("open");
  });
});

test("in a day that is dated ten years back, nobody of age is asked for a guardian", async () => {
  const { dayId } = await day().create({ date: "2016-11-14", title: "Back", sure: true });
  await day().open({ sure: true });
  const [adult = 0] = addPeople(made, [{ league: "North Quay", name: "Ada Mant", birthYear: 2002 }], dayId);
  expect((await made.as("check-in").checkIn.admit(answersOf(adult))).state).toBe("testing");
});

describe("until a day opens", () => {
  test("its name and date can be changed; a date that is not near is held, the one that it has is not asked again", async () => {
    const { dayId } = await day().create({ ...wrongly, sure: true });
    await day().changePlan({ dayId, date: wrongly.date, title: "  Winter testing day " });
    expect((await day().current()).day).toMatchObject({ date: wrongly.date, title: "Winter testing day" });
    const far = day().changePlan({ dayId, date: "2035-12-06", title: "Winter" });
    expect((await refusalOf(far)).key).toBe("dayPlan.farAway");
    await day().changePlan({ dayId, date: "2026-11-14", title: "Winter" });
    expect((await day().current()).day).toMatchObject({ date: "2026-11-14", title: "Winter" });
    await day().open();
    const late = day().changePlan({ dayId, date: "2026-11-15", title: "Winter" });
    expect((await refusalOf(late)).key).toBe("dayPlan.opened");
    expect((await refusalOf(day().discard({ dayId }))).key).toBe("dayPlan.opened");
  });

  test("the people of the last day can be put on its list, once, and nobody without a last day", async () => {
    const first = await day().create({ date: "2026-11-14", title: "Autumn" });
    const ids = addPeople(
      made,
      ["Ada Mant", "Bo Lt", "Cy Clone"].map((name) => ({ league: "North Quay", name })),
      first.dayId,
    );
    expect((await refusalOf(day().listAgain())).key).toBe("dayPlan.noneBefore");
    await day().open();
    await made.as("check-in").checkIn.admit(answersOf(ids[0] ?? 0));
    await day().close({ dayId: first.dayId });
    expect((await refusalOf(day().listAgain())).key).toBe("day.none");
    await day().create({ date: "2026-11-15", title: "Again" });
    expect(await day().listAgain()).toEqual({ added: 3 });
    expect(await day().listAgain()).toEqual({ added: 0 });
    expect((await day().overview()).counts).toMatchObject({ expected: 3, testing: 0 });
    await expect(made.as("check-in").day.listAgain()).rejects.toMatchObject({ code: "FORBIDDEN" });
  });

  test("it can be thrown away: athletes stay, the list goes, and a retry reaches no other day", async () => {
    const { dayId } = await day().create({ date: "2026-11-14", title: "Wintr Testng" });
    const [ada = 0] = addPeople(made, [{ league: "North Quay", name: "Ada Mant" }], dayId);
    await day().discard({ dayId });
    expect((await day().current()).day).toBeNull();
    expect((await made.as("organiser").people.get({ athleteId: ada })).name).toBe("Ada Mant");
    const next = await day().create({ date: "2026-11-14", title: "Winter testing" });
    expect(next.dayId).not.toBe(dayId);
    await day().discard({ dayId });
    expect((await day().current()).day?.title).toBe("Winter testing");
    expect((await refusalOf(day().discard({ dayId: 99 }))).key).toBe("day.none");
  });
});
