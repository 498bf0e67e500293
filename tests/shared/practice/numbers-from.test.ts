import { expect, it } from 'vitest';
import { numbersFrom } from '@/shared/practice/numbers-from';

it('gives the same numbers for the same seed, from 0 to under 1, spread evenly', () => {
  const [one, same] = [numbersFrom(7), numbersFrom(7)];
  const values = Array.from({ length: 10_000 }, one);
  expect(Array.from({ length: 10_000 }, same)).toEqual(values);
  const tenths = Array.from({ length: 10 }, (_, tenth) => values.filter((value) => Math.floor(value * 10) === tenth));
  // 1,000 are expected in each; three times √900 is 90.
  for (const { length } of tenths) expect(Math.abs(length - 1000)).toBeLessThan(100);
});

it('begins differently for seeds that are neighbours', () => {
  const firsts = Array.from({ length: 40 }, (_, seed) => Math.floor(numbersFrom(seed)() * 6));
  expect(new Set(firsts).size).toBe(6);
});
