/** Formats 83 456 ms as "1:23", or "1:23.4"; before time 0 the time left, with a minus: "−3". */
export function writeClock(ms: number, tenths: boolean): string {
  if (ms < 0) return `−${Math.ceil(-ms / 1000)}`;
  const whole = Math.floor(ms / 1000);
  const [minutes, seconds] = [Math.floor(whole / 60), String(whole % 60).padStart(2, "0")];
  return `${minutes}:${seconds}${tenths ? `.${Math.floor((ms % 1000) / 100)}` : ""}`;
}
