/**
 * A staircase that finds how small a fault a person sees: two-down one-up. After two right answers in a row the fault
 * gets smaller, after each wrong one larger, so that it settles where a right answer has probability √½ = 0.707
 * (H. Levitt, “Transformed up-down methods in psychoacoustics”, J. Acoust. Soc. Am. 49, 1971, table I).
 * Pure: each answer gives a new staircase.
 */
export type Staircase = {
  /** The fault to show next, 1/1000 em. */
  readonly level: number;
  readonly limits: { readonly least: number; readonly most: number };
  /** Right answers in a row since the level last changed. */
  readonly rightInRow: number;
  readonly direction: 'down' | 'up' | null;
  /** Levels at which the direction turned, in order. */
  readonly turns: readonly number[];
  readonly trials: number;
};

/** A level changes by this factor until the fourth turn, and by the finer one after it. */
const COARSE = 1.6;
const FINE = 1.2;
/** The first turns still depend on where it began and are left out of the answer. */
const LEFT_OUT = 4;
const TURNS = 12;
const MOST_TRIALS = 80;

/** @throws RangeError unless least ≤ start ≤ most, all above 0. */
export function startStaircase(start: number, limits: { least: number; most: number }): Staircase {
  if (!(limits.least > 0 && limits.least <= start && start <= limits.most)) {
    throw new RangeError(`A staircase from ${start} does not fit between ${limits.least} and ${limits.most}.`);
  }
  return { level: start, limits, rightInRow: 0, direction: null, turns: [], trials: 0 };
}

export function answerStaircase(before: Staircase, right: boolean): Staircase {
  const trials = before.trials + 1;
  if (right && before.rightInRow === 0) return { ...before, trials, rightInRow: 1 };
  const direction = right ? 'down' : 'up';
  const turns =
    before.direction !== null && before.direction !== direction ? [...before.turns, before.level] : before.turns;
  const factor = turns.length < LEFT_OUT ? COARSE : FINE;
  const level = right ? before.level / factor : before.level * factor;
  return {
    ...before,
    trials,
    turns,
    direction,
    rightInRow: 0,
    level: Math.max(before.limits.least, Math.min(before.limits.most, level)),
  };
}

export const isFinished = (staircase: Staircase): boolean =>
  staircase.turns.length >= TURNS || staircase.trials >= MOST_TRIALS;

/**
 * The smallest fault seen with probability 0.707: the geometric mean of the later turns, since steps are factors.
 * Since steps have a size, a long run settles at 0.69 and a dozen turns at about 0.73 right (measured in the test).
 * Null while there are too few.
 */
export function threshold({ turns }: Staircase): number | null {
  const counted = turns.slice(LEFT_OUT);
  // An even number, so that upper and lower turns weigh alike.
  const even = counted.slice(counted.length % 2);
  return even.length < 2 ? null : Math.exp(even.reduce((sum, level) => sum + Math.log(level), 0) / even.length);
}
