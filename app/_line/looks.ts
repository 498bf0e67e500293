import type { LookName } from '@/shared/line/looks';

/** A page on which a line can be looked at in these ways. */
export type LookScreen = 'bench' | 'desk' | 'wall';

export type Look = {
  /** On the screen. */
  readonly name: string;
  /** What it helps to see. */
  readonly says: string;
  /** Single key, the same on every screen. It can be changed at the bench. */
  readonly key: string;
  readonly offered: readonly LookScreen[];
};

const everywhere = ['bench', 'desk', 'wall'] as const;

/**
 * All ways of looking, in the order they are offered. What each does to a line is defined in `shared/line/shapes.ts`.
 */
export const lookTable: Record<LookName, Look> = {
  white: {
    name: 'White between',
    says: 'Hatches the white between the letters.',
    key: 'w',
    offered: everywhere,
  },
  counters: {
    name: 'White inside',
    says: 'Dots the counters, closed and open, to hold them against the gaps.',
    key: 'c',
    offered: everywhere,
  },
  hidden: { name: 'Letters hidden', says: 'Leaves only the white.', key: 'l', offered: everywhere },
  three: {
    name: 'Three letters',
    says: 'Covers all but three letters; choosing the next gap moves on by one.',
    key: 't',
    offered: everywhere,
  },
  blur: {
    name: 'Blurred',
    says: 'Takes the edges away, so that dark and light spots show.',
    key: 's',
    offered: everywhere,
  },
  head: {
    name: 'On its head',
    says: 'Turns the line round, so that it is shapes and no longer words.',
    key: 'h',
    offered: everywhere,
  },
  mirror: { name: 'Mirrored', says: 'Left becomes right.', key: 'm', offered: everywhere },
  opposite: {
    name: 'Opposite ground',
    says: 'Dark for light and light for dark, only while you look.',
    key: 'o',
    offered: everywhere,
  },
  guides: {
    name: 'Guide lines',
    says: 'Baseline, x-height, capitals, ascenders and descenders.',
    key: 'g',
    offered: ['bench', 'desk'],
  },
  why: {
    name: 'Show me why',
    says: 'Draws both edges of the chosen gap and how far the measure sees into it.',
    key: 'y',
    offered: ['bench', 'desk'],
  },
};

export const looksOn = (screen: LookScreen): LookName[] =>
  (Object.keys(lookTable) as LookName[]).filter((look) => lookTable[look].offered.includes(screen));
