import { expect, test } from 'vitest';
import { thinned } from '@/shared/line/white';

test('leaves out what lies on a straight line and keeps corners', () => {
  expect(thinned([0, 0, 1, 0, 2, 0, 3, 0, 3, 1, 3, 2], 0.1)).toEqual([0, 0, 3, 0, 3, 2]);
});

test('keeps a bend that is larger than the tolerance', () => {
  expect(thinned([0, 0, 5, 1, 10, 0], 0.5)).toEqual([0, 0, 5, 1, 10, 0]);
  expect(thinned([0, 0, 5, 1, 10, 0], 1.5)).toEqual([0, 0, 10, 0]);
});
