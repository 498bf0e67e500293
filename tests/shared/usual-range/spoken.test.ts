import { expect, test } from 'vitest';
import { spokenOutside } from '@/shared/usual-range/spoken';

const WIDER = { outside: true, surprise: 1.4, apparentGap: 110, reference: 100, clearance: 80 };

test('a pair outside its range is told the way it errs', () => {
  expect(spokenOutside(WIDER, 150)).toBe('wider');
  expect(spokenOutside({ ...WIDER, surprise: -1.4, apparentGap: 90 }, 150)).toBe('tighter');
});

test('it is never told where its white errs the other way, nor wider where its letters nearly meet', () => {
  expect(spokenOutside({ ...WIDER, apparentGap: 99 }, 150)).toBeNull();
  expect(spokenOutside({ ...WIDER, surprise: -1.4, apparentGap: 101 }, 150)).toBeNull();
  expect(spokenOutside({ ...WIDER, clearance: 29 }, 150)).toBeNull();
});

test('nothing is told inside the range, where it is silent, or where the line has no middle', () => {
  expect(spokenOutside({ ...WIDER, outside: false }, 150)).toBeNull();
  expect(spokenOutside({ ...WIDER, outside: null, surprise: null }, 150)).toBeNull();
  expect(spokenOutside({ ...WIDER, reference: null }, 150)).toBeNull();
});
