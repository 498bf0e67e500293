/** Ways of looking. All of them can be combined. */
export type Look =
  'white' | 'counters' | 'hidden' | 'head' | 'mirror' | 'opposite' | 'blur' | 'three' | 'guides' | 'why';

export type Looks = { readonly [look in Look]: boolean };

export const noLooks: Looks = {
  white: false,
  counters: false,
  hidden: false,
  head: false,
  mirror: false,
  opposite: false,
  blur: false,
  three: false,
  guides: false,
  why: false,
};

/** The letters that stay open when all but three are covered: the two of a gap and the next one. */
export function threeAt(gap: number, letterCount: number): { from: number; to: number } {
  const from = Math.max(0, Math.min(gap, letterCount - 3));
  return { from, to: Math.min(letterCount - 1, from + 2) };
}

/** How another spacing is laid to the one being set. */
export type Laying = 'under' | 'beside' | 'in turn';

/** Words on the screen; `says` tells what it is good for. */
export const lookWords: Record<Look, { name: string; says: string }> = {
  white: { name: 'White between', says: 'Hatches the white between the letters.' },
  counters: { name: 'White inside', says: 'Dots the counters, closed and open, to hold them against the gaps.' },
  hidden: { name: 'Letters hidden', says: 'Leaves only the white.' },
  three: { name: 'Three letters', says: 'Covers all but three letters; choosing the next gap moves on by one.' },
  blur: { name: 'Blurred', says: 'Takes the edges away, so that dark and light spots show.' },
  head: { name: 'On its head', says: 'Turns the line round, so that it is shapes and no longer words.' },
  mirror: { name: 'Mirrored', says: 'Left becomes right.' },
  opposite: { name: 'Opposite ground', says: 'Dark for light and light for dark, only while you look.' },
  guides: { name: 'Guide lines', says: 'Baseline, x-height, capitals, ascenders and descenders.' },
  why: { name: 'Show me why', says: 'Draws both edges of the chosen gap and how far the measure sees into it.' },
};
