import { AppError, changedMeanwhile, notFound } from '@/lib/access/errors';
import { type Context, operation } from '@/lib/access/operation';
import { isTaken, retryOnConflict } from '@/lib/data/retry';
import type { Seat } from '@/lib/data/seats';
import { formerInstructor } from '@/lib/reference/references';
import { settingsOf } from '@/lib/rows/exercise';
import { readPack } from '@/lib/rows/specimen';
import { misfitOf, spacingsOf } from '@/shared/demonstration/steps';
import { leadsCourse, teaches } from '@/shared/schemas/course';
import {
  demonstrationStepsSchema,
  saveDemonstrationInput,
  removeDemonstrationInput,
  renameDemonstrationInput,
  getDemonstrationInput,
  setDemonstrationShownInput,
} from '@/shared/schemas/demonstration';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { groundSchema, sizeSchema } from '@/shared/schemas/spacing';
import { accommodationsOf, roundsAt } from './rounds';

/**
 * The demonstrations of an exercise in the order of its lines: all for staff, the shown ones for students once a round
 * has opened.
 */
export const listDemonstrations = operation({
  name: 'list-demonstrations',
  allow: 'exercise:see',
  input: exerciseOnly,
  run: async ({ data, now }, { exerciseId }) => {
    const seat = await data.seats.atExercise(exerciseId);
    if (!seat) throw notFound();
    const forStaff = teaches(seat.member.role);
    const rows = mayLook(seat, now) ? await data.demonstrations.ofExercise(exerciseId, forStaff) : [];
    const all = rows.map((row) => ({
      ...demonstrationView(row),
      mayChange: forStaff && (row.authorId === seat.member.id || leadsCourse(seat.member.role)),
    }));
    return {
      exercise: {
        id: exerciseId,
        title: seat.exercise.title,
        referencesShown: settingsOf(seat.exercise).referencesShown,
      },
      course: { id: seat.course.id, title: seat.course.title, timeZone: seat.course.timeZone },
      role: seat.member.role,
      demonstrations: inLineOrder(all.filter(({ removedAt }) => removedAt === null)),
      removed: inLineOrder(all.filter(({ removedAt, mayChange }) => removedAt !== null && mayChange)),
    };
  },
});

const inLineOrder = <View extends DemonstrationView>(views: View[]): View[] =>
  [...views].sort((one, other) => one.position - other.position);

/** One demonstration, to be looked at step by step. For a student one that is not shown is not there. */
export const getDemonstration = operation({
  name: 'get-demonstration',
  allow: 'exercise:see',
  input: getDemonstrationInput,
  run: async ({ data, now, actor }, { exerciseId, demonstrationId }) => {
    const seat = await data.seats.atExercise(exerciseId);
    const row = seat && mayLook(seat, now) ? await data.demonstrations.find(demonstrationId) : null;
    if (!seat || row?.specimenVersion.specimen.exerciseId !== exerciseId || actor.kind !== 'person') throw notFound();
    const { member } = seat;
    return {
      exercise: {
        id: exerciseId,
        title: seat.exercise.title,
        referencesShown: settingsOf(seat.exercise).referencesShown,
      },
      course: { id: seat.course.id, title: seat.course.title, timeZone: seat.course.timeZone },
      role: member.role,
      personKey: actor.userId,
      accommodations: accommodationsOf(member),
      demonstration: demonstrationView(row),
      mayChange: teaches(member.role) && (await data.demonstrations.mayKeep(demonstrationId)),
    };
  },
});

type Row = {
  id: string;
  title: string;
  steps: string;
  createdAt: Date;
  shownAt: Date | null;
  removedAt: Date | null;
  version: number;
  author: { user: { name: string } | null };
  specimenVersion: {
    text: string;
    packSha: string;
    size: number;
    unit: string;
    ground: string;
    pack: { payload: string };
    specimen: { id: string; position: number };
  };
};

/** A demonstration with its line, checked on the way out. */
function demonstrationView({ specimenVersion: line, author, steps, ...row }: Row) {
  const recorded = demonstrationStepsSchema.parse(JSON.parse(steps));
  const spacings = spacingsOf(recorded);
  return {
    ...row,
    author: author.user?.name ?? formerInstructor,
    specimenId: line.specimen.id,
    position: line.specimen.position,
    text: line.text,
    pack: readPack(line.packSha, line.pack.payload),
    size: sizeSchema.parse({ value: line.size, unit: line.unit }),
    ground: groundSchema.parse(line.ground),
    recorded,
    /** The line at the end of the recording. */
    last: spacings[spacings.length - 1]!,
    reasons: recorded.steps.filter(({ reason }) => reason !== '').length,
  };
}
export type DemonstrationView = ReturnType<typeof demonstrationView>;

/** Lines, and so what was shown on them, are there for a student once a round has opened; for staff always. */
const mayLook = (seat: Seat, now: Date): boolean => teaches(seat.member.role) || roundsAt(seat, now).current !== null;

/** Stores what was recorded on the bench. Only staff see it until it is shown. Sent again it is the same. */
export const saveDemonstration = operation({
  name: 'save-demonstration',
  allow: 'reference:set',
  input: saveDemonstrationInput,
  run: ({ data, now }, { demonstrationId, specimenVersionId, title, recorded }) =>
    retryOnConflict(async () => {
      const version = await data.specimens.version(specimenVersionId);
      const member = version && (await data.exercises.myMember(version.specimen.exercise.courseId));
      if (!member) throw notFound();
      const misfit = misfitOf(recorded, readPack(version.packSha, version.pack.payload).letters.length - 1);
      if (misfit) throw new AppError('INVALID', `${misfit} The recording is still on your device.`);
      const there = await data.demonstrations.ownById(demonstrationId);
      if (!there) await make();
      return { id: demonstrationId, exerciseId: version.specimen.exercise.id };

      async function make(): Promise<void> {
        try {
          await data.demonstrations.create(
            { id: demonstrationId, specimenVersionId, authorId: member!.id, title, recorded },
            now,
          );
        } catch (error) {
          // The same recording arrived twice at once, or the id is another person's, which gets the same answer as an
          // invalid one.
          if (isTaken(error) && !(await data.demonstrations.ownById(demonstrationId))) throw notFound();
          if (!isTaken(error)) throw error;
        }
      }
    }),
});

/**
 * Shows a demonstration to the course, or takes it back; both are written into the course's log, as for any reference.
 */
export const setDemonstrationShown = operation({
  name: 'set-demonstration-shown',
  allow: 'reference:set',
  input: setDemonstrationShownInput,
  run: async (context, { demonstrationId, version, shown }) => {
    const { courseId, ...changed } = await changeDemonstration(context, demonstrationId, version, {
      shownAt: shown ? context.now : null,
    });
    await context.data.audit.record(
      {
        courseId,
        verb: shown ? 'demonstration shown' : 'demonstration hidden',
        subject: `demonstration:${demonstrationId}`,
      },
      context.now,
    );
    return { ...changed, shown };
  },
});

/** Gives a demonstration another title. */
export const renameDemonstration = operation({
  name: 'rename-demonstration',
  allow: 'reference:set',
  input: renameDemonstrationInput,
  run: (context, { demonstrationId, version, title }) =>
    changeDemonstration(context, demonstrationId, version, { title }),
});

/** Puts a demonstration aside, or back where it was; nothing is deleted. */
export const removeDemonstration = operation({
  name: 'remove-demonstration',
  allow: 'reference:set',
  input: removeDemonstrationInput,
  run: async (context, { demonstrationId, version, removed }) => ({
    ...(await changeDemonstration(context, demonstrationId, version, { removedAt: removed ? context.now : null })),
    removed,
  }),
});

type Patch = { title?: string; shownAt?: Date | null; removedAt?: Date | null };

/**
 * Changes a demonstration's title, archiving or showing; never its steps. Only its author and instructors of the
 * course.
 */
async function changeDemonstration({ data }: Context, demonstrationId: string, version: number, patch: Patch) {
  const row = await data.demonstrations.find(demonstrationId);
  if (!row || !(await data.demonstrations.mayKeep(demonstrationId))) throw notFound();
  if (!(await data.demonstrations.change(demonstrationId, version, patch))) throw changedMeanwhile('the demonstration');
  return {
    demonstrationId,
    exerciseId: row.specimenVersion.specimen.exerciseId,
    courseId: row.specimenVersion.specimen.exercise.courseId,
  };
}
