import { expect, test } from 'vitest';
import { counted, numberText, perMille, signed, withUnit } from '@/shared/text/number';

test('numbers are set with a real minus (U+2212), never a hyphen', () => {
  expect(perMille(-12)).toBe('\u221212');
  expect(signed(8)).toBe('+8');
  expect(signed(-8)).toBe('\u22128');
  expect(signed(0)).toBe('0');
  expect(numberText(-0.04, 1)).toBe('0');
  expect(numberText(2.50, 2)).toBe('2.5');
  expect(numberText(100, 0)).toBe('100');
});

test('a thin space (U+2009) stands before a unit', () => {
  expect(withUnit(48, 'px')).toBe('48\u2009px');
});

test('a failure is never a plausible number', () => {
  expect(() => numberText(NaN)).toThrow('NaN');
  expect(() => numberText(Infinity)).toThrow('Infinity');
});

test('counts in words', () => {
  expect([counted(0, 'line'), counted(1, 'line'), counted(3, 'line'), counted(2, 'person', 'people')]).toEqual(['no lines', '1 line', '3 lines', '2 people']);
});
