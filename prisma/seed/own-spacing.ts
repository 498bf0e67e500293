import type { Pack } from '@/shared/schemas/pack';
import { lines } from './exercise-words';

/** What the demo's instructor adds to a line beyond its face's own kerning. Invented. */
export type OwnSpacing = {
  /** For the size: large reading faces are drawn together, capitals and small lines opened. 1/1000 em. */
  tracking: number;
  /** By the two letters of a pair; each of them small, each with a reason that holds when one looks. */
  changes: Readonly<Record<string, { by: number; why: string }>>;
};

/** In the order of the demo's lines. */
const settings: readonly OwnSpacing[] = [
  {
    tracking: 6,
    changes: {
      AV: { by: -8, why: 'A and V lean the same way: at this size they can come closer, with a clear channel left.' },
      TO: { by: -10, why: 'Let the bar of the T come over the O.' },
      WA: { by: -6, why: 'Set like the AV beside it: the two slants run side by side.' },
    },
  },
  {
    tracking: -10,
    changes: {
      Af: { by: 8, why: 'The foot of the A nearly meets the f. As the rest closes, this one stays.' },
      ft: { by: 10, why: 'f and t would touch once the line is closed, so this pair keeps its room.' },
    },
  },
  {
    tracking: 12,
    changes: {
      TV: { by: 20, why: 'The bar of the T touched the V. Opened until the line of tops is clear.' },
      AT: { by: -12, why: 'The widest gap of the word: the T can reach further over the A.' },
      YA: { by: -12, why: 'The widest hole of the line. Close it further than feels polite.' },
      AW: { by: -8, why: 'Two slants side by side, closed a little so that they match YA.' },
    },
  },
  {
    tracking: -8,
    changes: {
      Wa: { by: -8, why: 'The a may sit under the arm of the W.' },
      To: { by: -6, why: 'The o goes under the bar of the T; there is still white between them.' },
    },
  },
  {
    tracking: 4,
    changes: {
      YA: { by: -10, why: 'The widest hole of the word. Nothing else comes near it.' },
      VO: { by: -4, why: 'The round meets the slant high up, so the gap opens below: a little closer.' },
    },
  },
  {
    tracking: 4,
    changes: {
      io: { by: -6, why: 'Stem beside round looks a little wider than round beside round here.' },
      sk: { by: 4, why: 'The narrowest gap of the word, opened by a hair.' },
    },
  },
  {
    tracking: 2,
    changes: {
      cl: { by: 10, why: 'At 18 pt a close c and l can be read as d.' },
      rn: { by: 8, why: 'At 18 pt a close r and n can be read as m.' },
    },
  },
  {
    tracking: 4,
    changes: {
      AV: {
        by: -12,
        why: 'Both letters are light and lean the same way: they can come closer than the face sets them.',
      },
      WA: { by: -6, why: 'The same for W and A, a little less, since the W stands steeper.' },
    },
  },
  {
    tracking: 2,
    changes: { AV: { by: -6, why: 'The bold has less white between its letters and asks for less closing.' } },
  },
  { tracking: 16, changes: {} },
];

/** How the instructor sets a line of the demo, by its place. */
export const ownSpacings: readonly OwnSpacing[] = lines.map(
  (_, place) => settings[place] ?? { tracking: 0, changes: {} },
);

/** The two letters of every gap, empty where a word space is between them. */
export function gapNames(pack: Pack): string[] {
  const letter = (at: number) => pack.glyphs[pack.letters[at]!]!.cluster;
  return pack.builtIn.map((_, gap) => (pack.wordSpace[gap] ? '' : letter(gap) + letter(gap + 1)));
}
