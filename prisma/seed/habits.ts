import { prepareLine } from '@/shared/measure';
import { numbersFrom } from '@/shared/practice/numbers-from';
import type { SideKind } from '@/shared/schemas/measure';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { gapNames, type OwnSpacing } from './own-spacing';

/**
 * Pairs by the sides that meet: two slants; an open side beside anything but a stem; a round one beside a round or open
 * one.
 */
type Meeting = 'slants' | 'open' | 'rounds';

/**
 * How an invented student sets lines: as the instructor would, but for what they do not see yet. All in 1/1000
 * em.
 */
export type Habits = {
  /** On every gap alike. */
  habit: number;
  /** Either way on every gap. */
  wander: number;
  faults: readonly { at: Meeting; by: number }[];
  /** What they say of their own work. */
  says: readonly string[];
};

export const habitsOfStudents: readonly Habits[] = [
  {
    habit: -1,
    wander: 3,
    faults: [],
    says: [
      'I set the straight pairs first and brought the round ones to them.',
      'I moved the E back until the gaps on its two sides were alike.',
    ],
  },
  {
    habit: 1,
    wander: 4,
    faults: [{ at: 'slants', by: 36 }],
    says: [
      'I did not dare to let A and V come close, so they kept their room.',
      'I closed the slanted letters step by step until their channel was clear and no wider.',
    ],
  },
  {
    habit: -22,
    wander: 5,
    faults: [],
    says: [
      'I tightened the lines as a whole before touching single gaps.',
      'I opened every line again and then looked for the pairs that touched.',
    ],
  },
  {
    habit: 2,
    wander: 4,
    faults: [{ at: 'open', by: 34 }],
    says: [
      'I compared the stems and left the T and the L for last.',
      'The T was the hole in every line, so I began with it this time.',
    ],
  },
  {
    habit: -2,
    wander: 4,
    faults: [{ at: 'rounds', by: -30 }],
    says: [
      'The rounds looked loose to me, so I drew them together most.',
      'I gave the rounds some of their white back.',
    ],
  },
  {
    habit: 0,
    wander: 5,
    faults: [{ at: 'slants', by: -38 }],
    says: [
      'The V and the A looked as if they had fallen apart, so I closed them most.',
      'I let the slanted letters go until they no longer made a dark spot.',
    ],
  },
];

/**
 * Letters that were left out of place, by the place of the line: the gap before it wider by so much and the next
 * tighter.
 */
type Slip = { line: number; gap: number; by: number };

const slips = (student: number): Slip[] => [
  ...(student % 5 === 0 ? [{ line: 0, gap: 2, by: 28 }] : []),
  ...(student % 4 === 1 ? [{ line: 1, gap: 5, by: -26 }] : []),
  ...(student % 6 === 3 ? [{ line: 3, gap: 7, by: 26 }] : []),
];

/**
 * Which student, on which line, by their places; and in which round of the demo's main exercise, or in the exercise
 * before it.
 */
export type HabitAt = { student: number; place: number; round?: keyof typeof SEEDS };

const SEEDS = { before: 1000, first: 4000, second: 9000 };

/**
 * A student's spacing of a line. Up to the first round faults are there in full, in the second a third of them is left.
 */
export function spacingBy(pack: Pack, own: OwnSpacing, { student, place, round = 'first' }: HabitAt): Spacing {
  const habits = habitsOfStudents[student % habitsOfStudents.length]!;
  const share = round === 'second' ? 0.3 : 1;
  const wander = round === 'second' ? habits.wander / 2 : habits.wander;
  const stray = straying(SEEDS[round] + student * 31 + place, wander);
  const meetings = meetingsOf(pack);
  const offsets = gapNames(pack).map((name, gap) => {
    if (name === '') return 0;
    const faults = habits.faults.filter(({ at }) => meetings[gap]!.includes(at)).map(({ by }) => by);
    for (const slip of slips(student))
      if (round !== 'before' && slip.line === place)
        faults.push(gap === slip.gap ? slip.by : gap === slip.gap + 1 ? -slip.by : 0);
    return Math.round((own.changes[name]?.by ?? 0) + share * faults.reduce((sum, by) => sum + by, 0) + stray());
  });
  return { tracking: own.tracking + Math.round(share * habits.habit), offsets };
}

/** Numbers between −most and most, the same each time for one seed. */
export function straying(seed: number, most: number): () => number {
  const next = numbersFrom(seed);
  return () => (next() * 2 - 1) * most;
}

const known = new Map<string, Meeting[][]>();

/** Which meetings each gap is. A line is made ready once, however often its pack is read. */
function meetingsOf(pack: Pack): Meeting[][] {
  const key = `${pack.unitsPerEm} ${pack.text} ${pack.builtIn.join()} ${pack.glyphs.map(({ advance }) => advance).join()}`;
  const before = known.get(key);
  if (before) return before;
  const made = prepareLine(pack).pairs.map(({ left, right, wordSpace }) =>
    wordSpace > 0 ? [] : meetingsOfSides([left.sides.right, right.sides.left]),
  );
  known.set(key, made);
  return made;
}

function meetingsOfSides(sides: readonly SideKind[]): Meeting[] {
  const has = (kind: SideKind) => sides.includes(kind);
  const upright = has('straight') || has('arched');
  const slants = sides.every((side) => side === 'slanted-in' || side === 'slanted-out');
  return [
    ...(slants ? (['slants'] as const) : []),
    ...(has('open') && !upright ? (['open'] as const) : []),
    ...(has('round') && sides.every((side) => side === 'round' || side === 'open') ? (['rounds'] as const) : []),
  ];
}
