/** To two decimals, halves up: what is stored and shown, so that payloads are short and the same everywhere. */
export function round2(value: number): number {
  // Adding 0 turns −0 into 0, which JSON and equality tests would distinguish.
  return Math.floor(value * 100 + 0.5) / 100 + 0;
}

/** To four decimals, for shares. */
export function round4(value: number): number {
  return Math.floor(value * 10_000 + 0.5) / 10_000 + 0;
}

export function roundOrNull(value: number | null): number | null {
  return value === null ? null : round2(value);
}

/** To a whole number, halves up. */
export function whole(value: number): number {
  return Math.floor(value + 0.5) + 0;
}
