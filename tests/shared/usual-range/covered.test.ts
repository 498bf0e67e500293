import { expect, test } from 'vitest';
import { isCovered } from '@/shared/usual-range/covered';

test('the usual range speaks of letters of one script, accents included', () => {
  for (const [left, right] of [
    ['A', 'V'],
    ['T', 'ä'],
    ['é', 'y'],
    ['Γ', 'α'],
    ['Г', 'о'],
    ['J\u0301', 'a'],
  ] as const)
    expect(isCovered(left, right), left + right).toBe(true);
});

test('it is silent on figures, marks, other scripts, scripts side by side and a capital after a small letter', () => {
  for (const [left, right] of [
    ['1', '1'],
    ['A', '.'],
    ['’', 's'],
    ['A', '7'],
    ['&', 'O'],
    ['Ա', 'Բ'],
    ['A', 'Г'],
    ['c', 'D'],
  ] as const)
    expect(isCovered(left, right), left + right).toBe(false);
});
