/** Moments that come, in seconds; the earliest is taken out first (a binary heap: Williams 1964, Algorithm 232). */
export interface Moments {
  readonly heap: number[];
}

/** Adds a moment. */
export function addMoment({ heap }: Moments, moment: number): void {
  let place = heap.length;
  heap.push(moment);
  while (place > 0) {
    const parent = (place - 1) >> 1;
    const above = heap[parent] as number;
    if (above <= moment) break;
    heap[place] = above;
    place = parent;
  }
  heap[place] = moment;
}

/** Takes the earliest moment out; infinity when none is left. */
export function takeMoment({ heap }: Moments): number {
  const first = heap[0];
  const last = heap.pop();
  if (first === undefined || last === undefined) return Number.POSITIVE_INFINITY;
  if (heap.length > 0) sinkFromTop(heap, last);
  return first;
}

function sinkFromTop(heap: number[], moment: number): void {
  let place = 0;
  for (;;) {
    const child = smallerChild(heap, place);
    if (child >= heap.length || (heap[child] as number) >= moment) break;
    heap[place] = heap[child] as number;
    place = child;
  }
  heap[place] = moment;
}

function smallerChild(heap: readonly number[], place: number): number {
  const left = 2 * place + 1;
  const isRight = left + 1 < heap.length && (heap[left + 1] as number) < (heap[left] as number);
  return isRight ? left + 1 : left;
}
