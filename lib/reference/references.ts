import { AppError, changedMeanwhile, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import type { ReferenceContent } from '@/lib/data/references';
import { retryOnConflict } from '@/lib/data/retry';
import { exerciseView } from '@/lib/rows/exercise';
import { readPack, specimenView } from '@/lib/rows/specimen';
import type { SaveAnswer } from '@/shared/schemas/draft';
import { repeatabilityOf } from '@/shared/reference-spacings';
import { exerciseOnly } from '@/shared/schemas/exercise';
import { referenceOnly, saveReferenceInput } from '@/shared/schemas/reference';
import { canonicalJson } from '@/shared/text/canonical-json';
import { isStarted, referenceView } from '@/lib/rows/reference';
import { newReferenceSet } from './compare';

/** All references of an exercise, specimen by specimen, and whether they have changed since they were last frozen. */
export const listReferences = operation({
  name: 'list-references',
  allow: 'reference:see',
  input: exerciseOnly,
  run: async ({ data }, { exerciseId }) => {
    const row = await data.exercises.find(exerciseId);
    if (!row) throw notFound();
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

/**
 * Stores the actor's own reference of a line, as sent by the bench. Sent again it gets the same answer. Result: the
 * version it made, or what is stored instead when another window was first.
 */
export const saveReference = operation({
  name: 'save-reference',
  allow: 'reference:set',
  input: saveReferenceInput,
  run: ({ data, now }, { specimenVersionId, slot, baseVersion, spacing, tolerances, reasons }): Promise<SaveAnswer> =>
    retryOnConflict(async () => {
      const version = await data.specimens.version(specimenVersionId);
      const member = version && (await data.exercises.myMember(version.specimen.exercise.courseId));
      if (!member) throw notFound();
      const pairs = readPack(version.packSha, version.pack.payload).letters.length - 1;
      const content: ReferenceContent = {
        spacing,
        tolerances: tolerances ?? Array.from({ length: pairs }, () => null),
        reasons: (reasons ?? Array.from({ length: pairs }, () => '')).map((reason) => reason.trim() || null),
        carriedFromId: null,
      };
      refuseOtherLength(pairs, { offsets: spacing.offsets, tolerances: content.tolerances, reasons: content.reasons });
      const key = { specimenVersionId, authorId: member.id, slot };
      const there = await data.references.byKey(key);
      if (!there && baseVersion === 0) {
        await data.references.create(key, content, now);
        return { version: 1 };
      }
      if (!there) throw notFound();
      if (there.version === baseVersion && (await data.references.change(there.id, baseVersion, content, now)))
        return { version: baseVersion + 1 };
      return answerFor(there, content);
    }),
});

type Row = Parameters<typeof referenceView>[0] & { version: number };

/** The same content again is accepted; anything else gets what is stored. */
function answerFor(there: Omit<Row, 'author'>, sent: ReferenceContent): SaveAnswer {
  const { spacing, tolerances, reasons } = referenceView({ ...there, author: { user: null } });
  const content = ({
    spacing: set,
    tolerances: allowed,
    reasons: given,
  }: Pick<ReferenceContent, 'spacing' | 'tolerances' | 'reasons'>) => canonicalJson([set, allowed, given]);
  if (content({ spacing, tolerances, reasons }) === content(sent)) return { version: there.version };
  return { conflict: { version: there.version, spacing, tolerances, reasons: reasons.map((reason) => reason ?? '') } };
}

function refuseOtherLength(pairs: number, lists: Record<string, readonly unknown[]>): void {
  for (const [name, list] of Object.entries(lists)) {
    if (list.length !== pairs)
      throw new AppError(
        'INVALID',
        `This line has ${pairs} gaps, and ${list.length} ${name} were sent. Reload the bench; your changes are kept on this device.`,
      );
  }
}

/** The author has looked at a carried start and takes it as it is: from now on it is a reference. */
export const acceptReference = operation({
  name: 'accept-reference',
  allow: 'reference:set',
  input: referenceOnly,
  run: async ({ data, now }, { referenceId }) => {
    const row = await data.references.find(referenceId);
    if (!row || !(await data.references.isMine(referenceId))) throw notFound();
    const { spacing, tolerances, reasons } = referenceView(row);
    const changed = await data.references.change(
      referenceId,
      row.version,
      { spacing, tolerances, reasons, carriedFromId: null },
      now,
    );
    if (!changed) throw changedMeanwhile('this reference');
    return { exerciseId: row.specimenVersion.specimen.exerciseId, specimenId: row.specimenVersion.specimen.id };
  },
});

/** Takes the actor's own reference away. Sets that were frozen with it, and comparisons made with them, stay. */
export const removeReference = operation({
  name: 'remove-reference',
  allow: 'reference:set',
  input: referenceOnly,
  run: async ({ data }, { referenceId }) => {
    const row = await data.references.find(referenceId);
    if (!row || !(await data.references.remove(referenceId))) throw notFound();
    return { exerciseId: row.specimenVersion.specimen.exerciseId, specimenId: row.specimenVersion.specimen.id };
  },
});

/** Freezes the references: a new numbered set, with which every proof of the exercise is compared again. */
export const applyReferences = operation({
  name: 'apply-references',
  allow: 'reference:set',
  input: exerciseOnly,
  run: async (context, { exerciseId }) => {
    if (!(await context.data.exercises.find(exerciseId))) throw notFound();
    return newReferenceSet(context, exerciseId);
  },
});

/** The name shown for an instructor who has left. */
export const formerInstructor = 'a former instructor';

/** Puts the name of the nearest reference's author into stored figures, which hold the member's id. */
export async function withNamedAuthors<Figures extends { author: string | null }>(
  data: ScopedData,
  figures: readonly (Figures | null)[],
): Promise<(Figures | null)[]> {
  const ids = figures.flatMap((one) => one?.author ?? []);
  const names = ids.length > 0 ? await data.referenceSets.authorNames(ids) : new Map<string, string>();
  return figures.map(
    (one) => one && { ...one, author: one.author === null ? null : (names.get(one.author) ?? formerInstructor) },
  );
}
