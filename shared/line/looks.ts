/** A look is a way of looking at a line. All of them can be combined. */
export type LookName =
  'white' | 'counters' | 'hidden' | 'head' | 'mirror' | 'opposite' | 'blur' | 'three' | 'guides' | 'why';

export type Looks = { readonly [look in LookName]: boolean };

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

/** First and last letter that is not covered. */
export type OpenLetters = { readonly from: number; readonly to: number };

/** The letters that stay open when all but three are covered: the two of a gap and the next one. */
export function threeAt(gap: number, letterCount: number): OpenLetters {
  const from = Math.max(0, Math.min(gap, letterCount - 3));
  return { from, to: Math.min(letterCount - 1, from + 2) };
}

/** The letters that are open under these looks, with `gap` chosen. */
export function openLetters(looks: Looks, gap: number, letterCount: number): OpenLetters {
  return looks.three ? threeAt(gap, letterCount) : { from: 0, to: letterCount - 1 };
}

/** Which way a line is turned over: on its head is half a turn, mirrored is left for right. */
export function flipsOf(looks: Looks): { flipX: boolean; flipY: boolean } {
  return { flipX: looks.head !== looks.mirror, flipY: looks.head };
}
