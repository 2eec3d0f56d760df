/** Reads one of a simulated day's numbers. All of them lie in one kind of array, since that is read fastest. */
export function at(numbers: Float64Array, index: number): number {
  return numbers[index] as number;
}

/** Returns so many numbers that are all the same. */
export function filled(count: number, value: number): Float64Array {
  return new Float64Array(count).fill(value);
}
