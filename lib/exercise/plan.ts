import { operation } from '@/lib/access/operation';
import { isStarted } from '@/lib/rows/reference';
import { leadsCourse } from '@/shared/schemas/course';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { criterionView, exerciseView, roundView } from '@/lib/rows/exercise';
import { specimenView } from '@/lib/rows/specimen';
import { findExercise } from './exercises';
import { publishChecks } from './publish';

/** Everything about an exercise, for those who plan it; also one that was put aside. */
export const getPlan = operation({
  name: 'get-plan',
  allow: 'exercise:plan',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    const row = await findExercise(context, exerciseId, { removed: true });
    const { data, now } = context;
    const [rounds, criteria, specimens, references] = await Promise.all([
      data.rounds.ofExercise(exerciseId),
      data.criteria.ofExercise(exerciseId, { retired: true }),
      data.specimens.ofExercise(exerciseId, { retired: true }),
      data.references.ofExercise(exerciseId),
    ]);
    const exercise = exerciseView(row);
    const all = specimens.map(specimenView).map((specimen) => {
      const own = references.filter(({ specimenVersionId }) => specimenVersionId === specimen.versionId);
      return {
        ...specimen,
        references: own.filter((one) => !isStarted(one)).length,
        started: own.filter(isStarted).length,
      };
    });
    const plan = {
      exercise,
      course: { id: row.course.id, title: row.course.title, timeZone: row.course.timeZone },
      rounds: rounds.map(roundView),
      criteria: criteria.map(criterionView).filter(({ retired }) => !retired),
      retiredCriteria: criteria.map(criterionView).filter(({ retired }) => retired),
      specimens: all.filter(({ retired }) => !retired),
      retiredSpecimens: all.filter(({ retired }) => retired),
      proofs: rounds.reduce((sum, round) => sum + round.proofs, 0),
    };
    const referenced = plan.specimens.filter(({ references: count }) => count > 0).length;
    return { ...plan, checks: publishChecks({ ...plan, referenced, now }) };
  },
});

export type Plan = Awaited<ReturnType<typeof getPlan>>;

/** The staff's overview of an exercise: the state of each round, and the lines. */
export const getOverview = operation({
  name: 'get-overview',
  allow: 'class:see',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    const row = await findExercise(context, exerciseId);
    const { data } = context;
    const [member, rounds, students, specimens, references] = await Promise.all([
      data.exercises.myMember(row.courseId),
      data.rounds.ofExercise(exerciseId),
      data.members.countStudents(row.courseId, '').then(({ all }) => all),
      data.specimens.ofExercise(exerciseId),
      data.references.ofExercise(exerciseId),
    ]);
    const tallies = await data.roundState.tallies(rounds.map(({ id }) => id));
    const set = new Set(references.filter((one) => !isStarted(one)).map(({ specimenVersionId }) => specimenVersionId));
    const lines = specimens.map(specimenView);
    return {
      exercise: exerciseView(row),
      course: { id: row.course.id, title: row.course.title, timeZone: row.course.timeZone },
      mayPlan: member !== null && leadsCourse(member.role),
      rounds: rounds.map((round) => ({ ...roundView(round), senders: tallies.get(round.id)?.sent ?? 0 })),
      students,
      specimens: lines,
      referenced: lines.filter(({ versionId }) => set.has(versionId)).length,
    };
  },
});

export type Overview = Awaited<ReturnType<typeof getOverview>>;
