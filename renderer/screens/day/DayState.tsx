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
  /** True if anybody is on the list. */
  readonly listed: boolean;
}

/** Offers the next step of the whole day: opening or closing it. */
export function DayState({ day, today, listed }: DayStateProps) {
  if (day.state === "closed") return null;
  if (day.state === "open") return <CloseDay dayId={day.id} />;
  return <OpenDay day={day} today={today} listed={listed} />;
}
