/** The volume of sounds, 0 (silent) to 1, kept only as long as the window lives. */

const place = "sound.volume";
const usual = 0.8;

export function keptVolume(): number {
  const kept = sessionStorage.getItem(place);
  const volume = kept === null ? Number.NaN : Number(kept);
  return volume >= 0 && volume <= 1 ? volume : usual;
}

export function keepVolume(volume: number): void {
  sessionStorage.setItem(place, String(volume));
}

/** Returns the factor for the amplitude: squared, so that the middle of a slider sounds about half as loud. */
export function gainOf(volume: number): number {
  return Math.min(1, Math.max(0, volume)) ** 2;
}
