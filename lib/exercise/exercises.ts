import * as z from 'zod/mini';
import { AppError, changedMeanwhile, notFound } from '@/lib/access/errors';
import { type Context, operation } from '@/lib/access/operation';
import { roleSchema, teaches } from '@/shared/schemas/course';
import {
  changeExerciseInput,
  createExerciseInput,
  exerciseAtVersion,
  exerciseSettingsSchema,
} from '@/shared/schemas/exercise';
import { idSchema } from '@/shared/schemas/id';
import { exerciseView, roundView, settingsOf } from '@/lib/rows/exercise';
import { roundViewFor } from '@/lib/work/rounds';

/** Begins an exercise as a draft that only staff see. */
export const createExercise = operation({
  name: 'create-exercise',
  allow: 'exercise:plan',
  input: createExerciseInput,
  run: async ({ data, now }, { courseId, title, brief, safetySigns }) => {
    const settings = exerciseSettingsSchema.parse({ safetySigns });
    const exerciseId = await data.exercises.create({ courseId, title, brief, settings }, now);
    if (exerciseId === null) throw notFound();
    return { exerciseId };
  },
});

/** The exercises of a course in their order: drafts, too, for staff. To a student with the dates that hold for them. */
export const listExercises = operation({
  name: 'list-exercises',
  allow: 'exercise:see',
  input: z.strictObject({ courseId: idSchema }),
  run: async ({ data }, { courseId }) => {
    const member = await data.exercises.myMember(courseId);
    if (!member) throw notFound();
    const rows = await data.exercises.ofCourse(courseId);
    return rows.map((row) => ({
      ...exerciseView(row),
      rounds: row.rounds.map((round) =>
        teaches(member.role) ? roundView(round) : roundViewFor({ ...round, exercise: row }, member),
      ),
      specimens: row._count.specimens,
    }));
  },
});

/** Title, brief and settings; they may change at any time. */
export const changeExercise = operation({
  name: 'change-exercise',
  allow: 'exercise:plan',
  input: changeExerciseInput,
  run: async (context, { exerciseId, version, title, brief, settings }) => {
    const { data, now } = context;
    const row = await findExercise(context, exerciseId);
    await data.transaction(async (inside) => {
      if (!(await inside.exercises.change(exerciseId, version, { title, brief, settings })))
        throw changedMeanwhile('this exercise');
      // Markers learn by it whose work they have had before them, so it is written down who did it.
      if (settingsOf(row).namesHidden && !settings.namesHidden)
        await inside.audit.record(
          { courseId: row.courseId, verb: 'names shown', subject: `exercise:${exerciseId}` },
          now,
        );
    });
    return { exerciseId, version: version + 1 };
  },
});

/** Ends an exercise: students see it and what was released, and can send nothing more. It can be opened again. */
export const closeExercise = operation({
  name: 'close-exercise',
  allow: 'exercise:plan',
  input: exerciseAtVersion,
  run: async (context, { exerciseId, version }) => {
    const { data, now } = context;
    const row = await findExercise(context, exerciseId);
    if (row.state !== 'published')
      throw new AppError('CONFLICT', 'Only an exercise that is published and open can be closed.');
    if (!(await data.exercises.change(exerciseId, version, { state: 'closed', closedAt: now })))
      throw changedMeanwhile('this exercise');
    await data.audit.record(
      { courseId: row.courseId, verb: 'exercise closed', subject: `exercise:${exerciseId}` },
      now,
    );
    return { exerciseId };
  },
});

/** Opens a closed exercise again; each round's own dates decide what can still be sent. */
export const reopenExercise = operation({
  name: 'reopen-exercise',
  allow: 'exercise:plan',
  input: exerciseAtVersion,
  run: async (context, { exerciseId, version }) => {
    const { data, now } = context;
    const row = await findExercise(context, exerciseId);
    if (row.state !== 'closed') throw new AppError('CONFLICT', 'Only a closed exercise can be opened again.');
    if (!(await data.exercises.change(exerciseId, version, { state: 'published', closedAt: null })))
      throw changedMeanwhile('this exercise');
    await data.audit.record(
      { courseId: row.courseId, verb: 'exercise opened again', subject: `exercise:${exerciseId}` },
      now,
    );
    return { exerciseId };
  },
});

/**
 * Puts a draft aside; it can be taken back. A published exercise is closed and never removed: it holds people's work.
 */
export const removeExercise = operation({
  name: 'remove-exercise',
  allow: 'exercise:plan',
  input: exerciseAtVersion,
  run: async (context, { exerciseId, version }) => {
    const { data, now } = context;
    const row = await findExercise(context, exerciseId);
    if (row.state !== 'draft')
      throw new AppError(
        'CONFLICT',
        'A published exercise holds students’ work and can’t be removed. Close it instead.',
      );
    if (!(await data.exercises.change(exerciseId, version, { removedAt: now })))
      throw changedMeanwhile('this exercise');
    await data.audit.record(
      { courseId: row.courseId, verb: 'exercise put aside', subject: `exercise:${exerciseId}` },
      now,
    );
    return { exerciseId };
  },
});

/** Takes a draft back that was put aside. */
export const restoreExercise = operation({
  name: 'restore-exercise',
  allow: 'exercise:plan',
  input: exerciseAtVersion,
  run: async (context, { exerciseId, version }) => {
    const { data, now } = context;
    const row = await findExercise(context, exerciseId, { removed: true });
    if (!(await data.exercises.change(exerciseId, version, { removedAt: null })))
      throw changedMeanwhile('this exercise');
    await data.audit.record(
      { courseId: row.courseId, verb: 'exercise restored', subject: `exercise:${exerciseId}` },
      now,
    );
    return { exerciseId };
  },
});

/** Drafts of a course that were removed and can be taken back. */
export const listRemovedExercises = operation({
  name: 'list-removed-exercises',
  allow: 'exercise:plan',
  input: z.strictObject({ courseId: idSchema }),
  run: async ({ data }, { courseId }) => {
    if (!(await data.exercises.myMember(courseId))) throw notFound();
    return data.exercises.putAside(courseId);
  },
});

/** The caller's role in an exercise, so that the page can show what that role sees. */
export const getExerciseRole = operation({
  name: 'get-exercise-role',
  allow: 'exercise:see',
  input: z.strictObject({ exerciseId: idSchema }),
  run: async ({ data }, { exerciseId }) => {
    const seat = await data.seats.atExercise(exerciseId);
    if (!seat) throw notFound();
    return { role: z.parse(roleSchema, seat.member.role), title: seat.exercise.title };
  },
});

/** The exercise row, or the one answer for an absent or inaccessible one. */
export async function findExercise({ data }: Context, id: string, options: { removed?: boolean } = {}) {
  const exercise = await data.exercises.find(id, options);
  if (!exercise) throw notFound();
  return exercise;
}
