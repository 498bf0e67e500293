import { AppError, changedMeanwhile } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { newReferenceSet } from '@/lib/reference/compare';
import { isStarted } from '@/lib/rows/reference';
import { exerciseAtVersion } from '@/shared/schemas/exercise';
import {
  criterionView,
  type CriterionView,
  exerciseView,
  type ExerciseView,
  roundView,
  type RoundView,
} from '@/lib/rows/exercise';
import { isDistanceAlone, withExerciseHeld } from './criteria';
import { findExercise } from './exercises';

/** Shows an exercise to the course's students, from the version that was on the screen. */
export const publishExercise = operation({
  name: 'publish-exercise',
  allow: 'exercise:plan',
  input: exerciseAtVersion,
  run: async (context, { exerciseId, version }) => {
    const { now } = context;
    const row = await findExercise(context, exerciseId);
    if (row.state !== 'draft') throw new AppError('CONFLICT', 'This exercise has been published already.');
    // First, so that no proof can arrive before the references it is compared with.
    await newReferenceSet(context, exerciseId);
    await withExerciseHeld(context, exerciseId, async (data) => {
      await refuseUnready(data, exerciseId, now);
      if (!(await data.exercises.change(exerciseId, version, { state: 'published', publishedAt: now })))
        throw changedMeanwhile('this exercise');
      await data.audit.record(
        { courseId: row.courseId, verb: 'exercise published', subject: `exercise:${exerciseId}` },
        now,
      );
    });
    return { exerciseId };
  },
});

async function refuseUnready(data: ScopedData, exerciseId: string, now: Date): Promise<void> {
  const row = await data.exercises.find(exerciseId);
  if (!row) return;
  const rounds = await data.rounds.ofExercise(exerciseId);
  const criteria = await data.criteria.ofExercise(exerciseId);
  const specimens = await data.specimens.ofExercise(exerciseId);
  const references = await data.references.ofExercise(exerciseId);
  const set = new Set(references.filter((one) => !isStarted(one)).map(({ specimenVersionId }) => specimenVersionId));
  const referenced = specimens.filter(({ versions }) => set.has(versions[0]!.id)).length;
  const checks = publishChecks({
    exercise: exerciseView(row),
    rounds: rounds.map(roundView),
    criteria: criteria.map(criterionView),
    specimens,
    referenced,
    now,
  });
  const stops = checks.filter((check) => check.stops);
  if (stops.length > 0)
    throw new AppError('INVALID', `Not published yet. ${stops.map(({ message }) => message).join(' ')}`);
}

/** One thing to look at before publishing. `stops`: it can't be published like this. */
type PublishCheck = {
  stops: boolean;
  message: string;
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

/** What prevents publishing, and what is only worth knowing. Empty when all is in order. */
export function publishChecks({ exercise, rounds, criteria, specimens, referenced, now }: Plan): PublishCheck[] {
  const checks: (PublishCheck | false)[] = [
    specimens.length === 0 && {
      stops: true,
      part: 'specimens',
      message: 'There is nothing to space yet: add at least one line.',
    },
    rounds.length === 0 && {
      stops: true,
      part: 'rounds',
      message: 'There is no round yet, so no proof could be sent: add one.',
    },
    isDistanceAlone(criteria) && {
      stops: true,
      part: 'criteria',
      message:
        'The only criterion is distance from the references. Two spacings can both be right: add a criterion that a person judges by eye.',
    },
    exercise.brief.trim() === '' && {
      stops: false,
      part: 'brief',
      message: 'The brief is empty: students will see the lines without a word.',
    },
    criteria.length === 0 && {
      stops: false,
      part: 'criteria',
      message: 'There are no criteria, so no marks can be given; notes can.',
    },
    referenced === 0 && {
      stops: false,
      part: 'references',
      message:
        'No line has a reference. That is allowed; you can set some later, and proofs will then be compared again.',
    },
    referenced > 0 &&
      referenced < specimens.length && {
        stops: false,
        part: 'references',
        message: `${referenced} of ${specimens.length} lines have a reference.`,
      },
    ...rounds.map(
      (round) =>
        round.dueAt !== null &&
        round.dueAt <= now && {
          stops: false,
          part: 'rounds' as const,
          message: `Round ${round.number} is already past its due date.`,
        },
    ),
    ...rounds.map(
      (round) =>
        pastFor(round, now).length > 0 && {
          stops: false,
          part: 'rounds' as const,
          message: `Round ${round.number} is already past its due date for ${pastFor(round, now).join(', ')}.`,
        },
    ),
    ...rounds.slice(1).map(
      (round, index) =>
        outOfOrder(rounds[index]!, round) && {
          stops: false,
          part: 'rounds' as const,
          message: `Round ${round.number} is due before round ${round.number - 1}.`,
        },
    ),
  ];
  return checks.filter((check) => check !== false);
}

const pastFor = (round: RoundView, now: Date): string[] =>
  round.sections.filter(({ dueAt }) => dueAt !== null && dueAt <= now).map(({ name }) => name);

const outOfOrder = (before: RoundView, after: RoundView): boolean =>
  before.dueAt !== null && after.dueAt !== null && after.dueAt <= before.dueAt;
