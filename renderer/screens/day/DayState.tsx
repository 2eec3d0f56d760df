import { CloseDay } from "./CloseDay.tsx";
import { OpenDay } from "./OpenDay.tsx";

interface DayStateProps {
  readonly day: {
    readonly id: number;
    readonly title: string;
    readonly date: string;
    readonly state: "planned" | "open" | "closed";
  };
  /** ISO 8601. */
  readonly today: string;
  /** Whether anybody is on the list. */
  readonly listed: boolean;
}

/** The one step that comes next for the day as a whole: open it, or close it. */
export function DayState({ day, today, listed }: DayStateProps) {
  if (day.state === "closed") return null;
  if (day.state === "open") return <CloseDay dayId={day.id} />;
  return <OpenDay day={day} today={today} listed={listed} />;
}
