import { operation } from '@/lib/access/operation';
import { findExercise } from '@/lib/exercise/find-exercise';
import { exerciseView } from '@/lib/rows/exercise';
import { specimenView } from '@/lib/rows/specimen';
import { canonicalJson } from '@/shared/text/canonical-json';
import { repeatabilityOf } from '@/shared/reference/reference-spacings';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { isStarted, referenceView } from '../rows/reference';

/** All references of an exercise, specimen by specimen, and whether they have changed since they were last frozen. */
export const listReferences = operation({
  name: 'list-references',
  allow: 'reference:see',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    const row = await findExercise(context, exerciseId);
    const { data } = context;
    const [specimens, rows, sets, latest, member] = await Promise.all([
      data.specimens.ofExercise(exerciseId),
      data.references.ofExercise(exerciseId),
      data.referenceSets.ofExercise(exerciseId),
      data.referenceSets.latest(exerciseId),
      data.exercises.myMember(row.courseId),
    ]);
    const used = await data.referenceSets.used(
      exerciseId,
      sets.map(({ id }) => id),
    );
    const all = rows.map((one) => ({
      ...referenceView(one),
      started: isStarted(one),
      updatedAt: one.updatedAt,
      mine: one.authorId === member?.id,
    }));
    return {
      exercise: exerciseView(row),
      course: { id: row.course.id, title: row.course.title, timeZone: row.course.timeZone },
      specimens: specimens.map(specimenView).map((specimen) => {
        const here = all.filter(({ specimenVersionId }) => specimenVersionId === specimen.versionId);
        return {
          ...specimen,
          references: here
            .filter(({ slot }) => slot === 1)
            .map((one) => ({
              ...one,
              repeatability: repeatabilityOf(here.filter(({ authorId }) => authorId === one.authorId)),
            })),
        };
      }),
      sets: sets.map(({ id, number, createdAt, madeBy, _count }) => ({
        id,
        number,
        createdAt,
        madeBy: madeBy?.user?.name ?? null,
        references: _count.items,
        used: used.has(id),
      })),
      changed:
        canonicalJson(contents(rows.filter((one) => !isStarted(one)))) !== canonicalJson(contents(latest?.items ?? [])),
    };
  },
});

type Content = {
  specimenVersionId: string;
  authorId: string;
  slot: number;
  tracking: number;
  offsets: string;
  tolerances: string;
  reasons: string;
};

const contents = (rows: readonly Content[]): string[] =>
  rows
    .map(({ specimenVersionId, authorId, slot, tracking, offsets, tolerances, reasons }) =>
      canonicalJson({ specimenVersionId, authorId, slot, tracking, offsets, tolerances, reasons }),
    )
    .sort();
