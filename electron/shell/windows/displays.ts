import type { Rectangle } from "electron";

/** The facts about a display that placing windows needs; lengths in device-independent pixels. */
export interface DisplayArea {
  readonly id: number;
  readonly bounds: Rectangle;
  /** The bounds without task bar and dock. */
  readonly workArea: Rectangle;
}

/** A window's place: its display, and the offset from the corner of its work area. */
export interface Home {
  readonly display: number;
  readonly offset: Rectangle;
}

/** Picks a display for the big screen: its last one, if there and not the desk's; else any but the desk's. */
export function boardScreen<S extends DisplayArea>(
  screens: readonly S[],
  desk: number,
  last: number | null,
): S | undefined {
  const others = screens.filter(({ id }) => id !== desk);
  return others.find(({ id }) => id === last) ?? others[0];
}

/** Returns a window's place, to find it again. */
export function homeOf(bounds: Rectangle, { id, workArea }: DisplayArea): Home {
  return { display: id, offset: { ...bounds, x: bounds.x - workArea.x, y: bounds.y - workArea.y } };
}

/** Returns a window's bounds at home or, without that display, at the same place on the one there instead. */
export function placeOnDisplay(home: Home, screens: readonly DisplayArea[], instead: DisplayArea): Rectangle {
  const { workArea } = screens.find(({ id }) => id === home.display) ?? instead;
  const { offset } = home;
  return fitInto({ ...offset, x: offset.x + workArea.x, y: offset.y + workArea.y }, workArea);
}

/** Fits a rectangle into `area`: moved as little as possible, and made smaller only if it is larger. */
export function fitInto(bounds: Rectangle, area: Rectangle): Rectangle {
  const width = Math.min(bounds.width, area.width);
  const height = Math.min(bounds.height, area.height);
  const between = (value: number, least: number, most: number) => Math.max(least, Math.min(most, value));
  return {
    x: between(bounds.x, area.x, area.x + area.width - width),
    y: between(bounds.y, area.y, area.y + area.height - height),
    width,
    height,
  };
}

export function sameRectangle(a: Rectangle, b: Rectangle): boolean {
  return a.x === b.x && a.y === b.y && a.width === b.width && a.height === b.height;
}
