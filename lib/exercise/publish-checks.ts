import type { CriterionView, ExerciseView, RoundView } from '../rows/exercise';
import { isDistanceAlone } from './distance-alone';

/** One thing to look at before publishing. `stops`: it can't be published like this. */
export type PublishCheck = {
  stops: boolean;
  said: string;
  part: 'brief' | 'rounds' | 'specimens' | 'criteria' | 'references';
};

type Plan = {
  exercise: ExerciseView;
  rounds: readonly RoundView[];
  criteria: readonly CriterionView[];
  specimens: readonly { id: string }[];
  referenced: number;
  now: Date;
};

/** What stands against publishing, and what is only worth knowing. Empty when all is in order. */
export function publishChecks({ exercise, rounds, criteria, specimens, referenced, now }: Plan): PublishCheck[] {
  const checks: (PublishCheck | false)[] = [
    specimens.length === 0 && {
      stops: true,
      part: 'specimens',
      said: 'There is nothing to space yet: add at least one line.',
    },
    rounds.length === 0 && {
      stops: true,
      part: 'rounds',
      said: 'There is no round yet, so no proof could be sent: add one.',
    },
    isDistanceAlone(criteria) && {
      stops: true,
      part: 'criteria',
      said: 'The only criterion is distance from the references. Two spacings can both be right: add a criterion that a person judges by eye.',
    },
    exercise.brief.trim() === '' && {
      stops: false,
      part: 'brief',
      said: 'The brief is empty: students will see the lines without a word.',
    },
    criteria.length === 0 && {
      stops: false,
      part: 'criteria',
      said: 'There are no criteria, so no marks can be given; notes can.',
    },
    referenced === 0 && {
      stops: false,
      part: 'references',
      said: 'No line has a reference. That is allowed; you can set some later, and proofs will then be compared again.',
    },
    referenced > 0 &&
      referenced < specimens.length && {
        stops: false,
        part: 'references',
        said: `${referenced} of ${specimens.length} lines have a reference.`,
      },
    ...rounds.map(
      (round) =>
        round.dueAt !== null &&
        round.dueAt <= now && {
          stops: false,
          part: 'rounds' as const,
          said: `Round ${round.number} is already past its due date.`,
        },
    ),
    ...rounds.slice(1).map(
      (round, index) =>
        outOfOrder(rounds[index]!, round) && {
          stops: false,
          part: 'rounds' as const,
          said: `Round ${round.number} is due before round ${round.number - 1}.`,
        },
    ),
  ];
  return checks.filter((check) => check !== false);
}

const outOfOrder = (before: RoundView, after: RoundView): boolean =>
  before.dueAt !== null && after.dueAt !== null && after.dueAt <= before.dueAt;
