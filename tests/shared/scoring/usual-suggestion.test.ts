import { describe, expect, it } from 'vitest';
import { beyondHalfRange, usualSuggestion } from '@/shared/scoring';

const usual = { low: -90, halfLow: -60, middle: -50, mean: -50, halfHigh: -40, high: -10, leftAlone: 0.1 };
const pair = { usual, surprise: 1, total: 0, offset: 0, clearance: 300 };
const line = { tightness: 0, stemGap: 150 };

describe('what is suggested without a reference', () => {
  it('is the nearest end of the half range: closing what is wide, opening what is tight', () => {
    expect(usualSuggestion(pair, line)).toBe(-40);
    expect(usualSuggestion({ ...pair, total: -100, offset: -100 }, line)).toBe(-60);
  });
  it('is nothing inside the half range, its ends included', () => {
    for (const total of [-60, -50, -40]) expect(usualSuggestion({ ...pair, total, offset: total }, line)).toBeNull();
  });
  it('leaves the built-in part and the line’s own tightness as they are', () => {
    // Built-in −30, offset 10: total −20; the line is 15 tighter, so the pair alone is at −5, 35 wider than the half
    // range.
    expect(usualSuggestion({ ...pair, total: -20, offset: 10 }, { ...line, tightness: -15 })).toBe(-25);
  });
  it('stops closing where the letters would nearly meet, and never stops opening', () => {
    // A fifth of 150 is 30: from 50 there is room for 20.
    expect(usualSuggestion({ ...pair, clearance: 50 }, line)).toBe(-20);
    expect(usualSuggestion({ ...pair, clearance: 30 }, line)).toBeNull();
    expect(usualSuggestion({ ...pair, total: -100, offset: -100, clearance: 0 }, line)).toBe(-60);
  });
  it('is nothing where the range is silent', () => {
    expect(usualSuggestion({ ...pair, usual: null }, line)).toBeNull();
    expect(usualSuggestion({ ...pair, surprise: null }, line)).toBeNull();
  });
});

it('beyond the half range is signed: above 0 wider', () => {
  expect(beyondHalfRange({ ...pair, total: -30 }, 0)).toBe(10);
  expect(beyondHalfRange({ ...pair, total: -75 }, 0)).toBe(-15);
  expect(beyondHalfRange({ ...pair, total: -50 }, 0)).toBe(0);
  expect(beyondHalfRange({ ...pair, usual: null }, 0)).toBeNull();
});
