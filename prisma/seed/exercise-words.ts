import type { TypedCriterion } from '@/shared/schemas/criterion';
import type { Ground, Size } from '@/shared/schemas/spacing';

/** What the demo's exercise says. Harbour, house and lines are made up. */
export const brief = `The harbour of an imaginary town gets new lettering: a name over the gate, two house signs, a poster and a few small lines. The faces are chosen and the sizes are fixed. What is left is the white.

Set every line so that no gap calls for attention before its neighbours do. Look at three letters at a time and move on by one. Turn the line on its head, look at it small, and only then look at a number.

Send a proof when the lines hold together, with one sentence on the decision you found hardest.`;

export type Line = { text: string; face: string; size: Size; ground: Ground };

/**
 * Large and small, sans, serif, slab and heavy; one word in two weights and two sizes, and one line on a dark ground.
 */
export const lines: readonly Line[] = [
  { text: 'HAVEN TO WAVE', face: 'lato-700', size: { value: 72, unit: 'px' }, ground: 'light' },
  { text: 'Afternoon Tide', face: 'playfair-display-700', size: { value: 96, unit: 'px' }, ground: 'light' },
  { text: 'LATVIAN YAWL', face: 'montserrat-700', size: { value: 64, unit: 'px' }, ground: 'dark' },
  { text: 'Warble & Toll', face: 'libre-baskerville-400', size: { value: 36, unit: 'pt' }, ground: 'light' },
  { text: 'VOYAGE 1747', face: 'oswald-500', size: { value: 54, unit: 'pt' }, ground: 'light' },
  { text: 'Kiosk', face: 'abril-fatface-400', size: { value: 120, unit: 'px' }, ground: 'dark' },
  { text: 'ferry clock, barn', face: 'bitter-400', size: { value: 18, unit: 'pt' }, ground: 'light' },
  { text: 'AVOWAL', face: 'work-sans-400', size: { value: 80, unit: 'px' }, ground: 'light' },
  { text: 'AVOWAL', face: 'work-sans-700', size: { value: 80, unit: 'px' }, ground: 'light' },
  { text: 'AVOWAL', face: 'work-sans-400', size: { value: 24, unit: 'px' }, ground: 'light' },
];

const levels = (words: readonly [string, string, number][]) =>
  words.map(([title, description, points]) => ({ title, description, points }));

export const criteria: readonly TypedCriterion[] = [
  {
    title: 'Evenness',
    basis: 'judgement',
    weight: 50,
    description: 'No gap looks wider or narrower than the others in its line.',
    levels: levels([
      ['Uneven', 'Several gaps break the line into pieces.', 20],
      ['Mostly even', 'The line holds, with a gap or two that catch the eye.', 60],
      ['Even', 'Nothing catches the eye before the words do.', 100],
    ]),
  },
  {
    title: 'Fit to size and ground',
    basis: 'judgement',
    weight: 30,
    description: 'Large lines are drawn together and small ones opened; light letters on dark get the room they need.',
    levels: levels([
      ['One habit', 'All lines are set alike, whatever their size.', 25],
      ['Seen', 'Size or ground has been answered, not both.', 65],
      ['Answered', 'Each line has the tightness that its use asks for.', 100],
    ]),
  },
  {
    title: 'Nearness to the references',
    basis: 'distance',
    weight: 20,
    description: 'How much lies outside the tolerance of the nearest reference. Evidence, and never the whole mark.',
    levels: levels([
      ['Far', 'Most pairs lie outside.', 30],
      ['Near', 'A few pairs lie outside.', 70],
      ['Within', 'Hardly a pair lies outside.', 100],
    ]),
  },
];

/** Reasons for the first steps of a demonstration where the reference gives none, and for its last. */
export const remarks: { readonly [place: number]: string; readonly last: string } = {
  0: 'I begin where the eye stops first, and leave everything else as it is.',
  1: 'Now this one calls. I hold it against the gap that I have just set, not against the letters beside it.',
  3: 'Three letters at a time from here: each gap between two others.',
  last: 'Last the whole line, opened by a hair: capitals want air. The gaps keep their order.',
};
