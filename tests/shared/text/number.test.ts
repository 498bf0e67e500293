import { expect, test } from 'vitest';
import { counted, heldTogether, numberText, perMille, signed, withUnit } from '@/shared/text/number';

test('numbers are set with a real minus (U+2212), never a hyphen', () => {
  expect(perMille(-12)).toBe('\u221212');
  expect(signed(8)).toBe('+8');
  expect(signed(-8)).toBe('\u22128');
  expect(signed(0)).toBe('0');
  expect(numberText(-0.04, 1)).toBe('0');
  expect(numberText(2.5, 2)).toBe('2.5');
  expect(numberText(100, 0)).toBe('100');
});

test('a thin space that no line ends at (U+202F) stands before a unit, in sentences of the measure too', () => {
  expect(withUnit(48, 'px')).toBe('48\u202Fpx');
  expect(heldTogether('At 14\u2009px only 0.7\u2009px is left.')).toBe('At 14\u202Fpx only 0.7\u202Fpx is left.');
});

test('a failure is never a plausible number', () => {
  expect(() => numberText(NaN)).toThrow('NaN');
  expect(() => numberText(Infinity)).toThrow('Infinity');
});

test('counts in words', () => {
  expect([counted(0, 'line'), counted(1, 'line'), counted(3, 'line'), counted(2, 'person', 'people')]).toEqual([
    'no lines',
    '1 line',
    '3 lines',
    '2 people',
  ]);
});
