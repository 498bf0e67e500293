import { expect, test } from 'vitest';
import { spokenOutside } from '@/shared/usual-range/spoken';

const WIDER = { outside: true, surprise: 1.4, apparentGap: 110, reference: 100, clearance: 80 };
const TIGHTER = { ...WIDER, surprise: -1.4, apparentGap: 90 };
const LINE = { stemGap: 150, faceReference: 120, tightness: -20 };

test('a pair outside its range is told the way it errs', () => {
  expect(spokenOutside(WIDER, LINE)).toBe('wider');
  expect(spokenOutside(TIGHTER, LINE)).toBe('tighter');
});

test('white a little to the other side is no witness against it: it cannot know what cannot be closed', () => {
  expect(spokenOutside({ ...WIDER, apparentGap: 95 }, LINE)).toBe('wider');
  expect(spokenOutside({ ...TIGHTER, apparentGap: 104 }, LINE)).toBe('tighter');
});

test('it is never told where its white clearly errs the other way, nor wider where its letters nearly meet', () => {
  expect(spokenOutside({ ...WIDER, apparentGap: 80 }, LINE)).toBeNull();
  expect(spokenOutside({ ...TIGHTER, apparentGap: 120 }, LINE)).toBeNull();
  expect(spokenOutside({ ...WIDER, clearance: 29 }, LINE)).toBeNull();
  expect(spokenOutside({ ...TIGHTER, clearance: 29 }, LINE)).toBe('tighter');
});

test('in a line too short for a middle its white is held against what the face gives, as tight as the line is set', () => {
  const short = { ...TIGHTER, reference: null };
  expect(spokenOutside(short, LINE)).toBe('tighter');
  expect(spokenOutside({ ...short, apparentGap: 115 }, LINE)).toBeNull();
  expect(spokenOutside({ ...short, apparentGap: 115 }, { ...LINE, tightness: 0 })).toBe('tighter');
  expect(spokenOutside(short, { ...LINE, faceReference: null })).toBeNull();
});

test('nothing is told inside the range or where it is silent', () => {
  expect(spokenOutside({ ...WIDER, outside: false }, LINE)).toBeNull();
  expect(spokenOutside({ ...WIDER, outside: null, surprise: null }, LINE)).toBeNull();
});
