/** Writes a length of time in seconds as hours and minutes: "3:05". */
export function hoursOf(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
}
