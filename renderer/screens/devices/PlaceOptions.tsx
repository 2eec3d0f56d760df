import { devicePlaces, useNameOfPlace } from "../../parts/devices/places.ts";

/** Lists places by their numbers, inside a select. */
export function PlaceOptions({ offered }: { readonly offered: readonly number[] }) {
  const nameOf = useNameOfPlace();
  return offered.map((number) => {
    const place = devicePlaces[number];
    return place === undefined ? null : (
      <option key={number} value={number}>
        {nameOf(place)}
      </option>
    );
  });
}
