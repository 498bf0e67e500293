import type { SpacingDocument } from '@/shared/editing/document';
import type { BenchState } from '../session/state';
import { chosenRun, current } from '../session/state';

/** What the guide needs to know of its line. */
export type GuideLine = {
  /** The gap that is looked at first, its letters, and the gap that is set too loose to be found. */
  readonly first: number;
  readonly loose: number;
  readonly letters: (gap: number) => string;
  readonly start: SpacingDocument;
};

export type GuideStep = {
  readonly title: string;
  readonly says: (line: GuideLine) => readonly string[];
  /** Whether the hand has done what was asked; null = nothing is asked, go on when you like. */
  readonly done: ((state: BenchState, line: GuideLine) => boolean) | null;
  /** Said once it is done. */
  readonly then: (line: GuideLine) => string;
};

/** How far the found gap is opened at first, and how near to even it must come, 1/1000 em. */
export const TOO_LOOSE = 110;
const NEAR = 35;
/** So far a gap must be moved before it counts as tried. */
const TRIED = 15;

/** The first line: what a gap is, what an offset is, what too loose looks like. */
export const guideSteps: readonly GuideStep[] = [
  {
    title: 'A gap',
    says: (line) => [
      `The white between two letters is a gap. It is the whole white, from top to bottom, and not only the closest spot.`,
      `Choose the gap in ${line.letters(line.first)}: point at it in the large line, or press Enter until the ticks stand there.`,
    ],
    done: ({ chosen }, line) => chosen.head === line.first,
    then: () => 'That is it. The two ticks show where you are, here and in the line at its true size above.',
  },
  {
    title: 'An offset',
    says: () => [
      'Now change it. Drag the gap to the right or the left, or press the arrow keys: up and right open, down and left close.',
      'Look at what happens to the letters after it.',
    ],
    done: (state, line) =>
      Math.abs((current(state).offsets[line.first] ?? 0) - (line.start.offsets[line.first] ?? 0)) >= TRIED &&
      !state.history.gesture,
    then: () =>
      'Everything to the right moved along, as it does when a line is set. What you added or took away is the offset of this gap. It counts in thousandths of an em, and the em is as large as the size of the type. Undo takes it back.',
  },
  {
    title: 'Too loose',
    says: () => [
      'One gap of this line is too loose: it holds more white than the others, and the word comes apart there.',
      'Find it and choose it. It helps to half close your eyes, or to switch on Blurred or White between.',
    ],
    done: (state, line) => chosenRun(state).from <= line.loose && chosenRun(state).to >= line.loose,
    then: (line) => `Yes, ${line.letters(line.loose)}.`,
  },
  {
    title: 'Even',
    says: (line) => [
      `Close ${line.letters(line.loose)} until it holds about as much white as the other gaps.`,
      'Trust your eye. Look at the small line as well: it tells more than the large one.',
    ],
    done: (state, line) =>
      Math.abs((current(state).offsets[line.loose] ?? 0) - ((line.start.offsets[line.loose] ?? 0) - TOO_LOOSE)) <=
        NEAR && !state.history.gesture,
    then: () =>
      'Now it stands with the others. Two people may stop at slightly different places, and both can be right.',
  },
  {
    title: 'Ways of looking',
    says: () => [
      'Under the line are ways of looking. Turn the line on its head, blur it, or see three letters at a time: each of them makes you see white and not words.',
      'That is all there is to know. The rest is looking.',
    ],
    done: null,
    then: () => '',
  },
];
