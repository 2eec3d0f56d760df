/** Freezes a plain value deeply: default parameters are shared and must never change by accident. */
export function frozen<Value>(value: Value): Value {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    for (const part of Object.values(value)) frozen(part);
    Object.freeze(value);
  }
  return value;
}
