import { changedMeanwhile, notFound } from '@/lib/access/errors';
import { type Context, operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import type { NewVersion } from '@/lib/data/specimens';
import { builtInSpacing, spacingOf } from '@/lib/rows/spacing';
import { newReferenceSet } from '@/lib/reference/compare';
import { moveByMap, pairMap } from '@/shared/exercise/pair-map';
import { isUntouched, madeStart } from '@/shared/exercise/line-start';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { changeSpecimenInput, type LineStart, previewChangeInput } from '@/shared/schemas/specimen';
import { lineOf, specimenView, type SpecimenView } from '@/lib/rows/specimen';
import { makeVersion, type TypedSpecimen } from './specimens';

/**
 * Makes a new version of a specimen. Drafts move to it pair by pair, references are copied to it the same way, and
 * proofs keep the version they were sent on. All of it or none.
 */
export const changeSpecimen = operation({
  name: 'change-specimen',
  allow: 'exercise:plan',
  input: changeSpecimenInput,
  run: async (context, { specimenId, number, ...typed }) => {
    const planned = await planChange(context, specimenId, typed);
    const exerciseId = planned.exercise.id;
    if (planned.before.number !== number) throw changedMeanwhile('this line');
    if (planned.same) return { exerciseId, specimenId, number, moved: 0 };
    // A student's change in between makes a unique key fail, and the whole is done again with it.
    const moved = await retryOnConflict(() =>
      context.data.transaction((data) => carryOut({ ...context, data }, specimenId, planned)),
    );
    if (planned.exercise.state !== 'draft') await newReferenceSet(context, exerciseId);
    return { exerciseId, specimenId, number: number + 1, moved };
  },
});

export async function carryOut(
  { data, now }: Context,
  specimenId: string,
  { exercise, before, after, pack, map }: PlannedChange,
): Promise<number> {
  const current = await data.specimens.find(specimenId);
  if (current?.versions[0]?.id !== before.versionId) throw changedMeanwhile('this line');
  const versionId = await data.specimens.addVersion(
    { ...after, specimenId, number: before.number + 1, previousId: before.versionId, pairMap: map },
    now,
  );
  const pairs = pack.letters.length - 1;
  const drafts = await data.specimens.drafts(before.versionId);
  const [began, begins] = [startOfView(before), after.details.start?.spacing ?? builtInSpacing(pairs)];
  for (const draft of drafts) {
    const spacing = spacingOf(draft);
    // Who has not moved anything yet begins where the line begins now.
    const moved = isUntouched(spacing, began)
      ? begins
      : { tracking: spacing.tracking, offsets: moveByMap(spacing.offsets, map, pairs, 0) };
    await data.specimens.moveDraft(draft, versionId, moved, now);
  }
  for (const reference of await data.references.ofVersion(before.versionId)) {
    await data.references.copy(
      reference,
      versionId,
      {
        spacing: {
          tracking: reference.tracking,
          offsets: moveByMap(JSON.parse(reference.offsets) as number[], map, pairs, 0),
        },
        tolerances: moveByMap(JSON.parse(reference.tolerances) as (number | null)[], map, pairs, null),
        reasons: moveByMap(JSON.parse(reference.reasons) as (string | null)[], map, pairs, null),
        carriedFromId:
          map.every((place) => place !== null) && map.length === pairs ? reference.carriedFromId : reference.id,
      },
      now,
    );
  }
  await data.audit.record(
    {
      courseId: exercise.courseId,
      verb: 'line changed',
      subject: `specimen:${specimenId}`,
      details: { number: before.number + 1, drafts: drafts.length },
    },
    now,
  );
  return drafts.length;
}

/**
 * What a change of a specimen will do, before it is done: which pairs stay, how many drafts move, which proofs keep the
 * old version.
 */
export const previewSpecimenChange = operation({
  name: 'preview-specimen-change',
  allow: 'exercise:plan',
  input: previewChangeInput,
  run: async (context, { specimenId, ...typed }) => {
    const { before, after, pack, map, same } = await planChange(context, specimenId, typed);
    const [drafts, proofs, references] = await Promise.all([
      context.data.specimens.workDrafts(before.versionId),
      context.data.specimens.proofsOf(before.versionId),
      context.data.references.ofVersion(before.versionId),
    ]);
    const letters = lineOf(before.pack).letters;
    return {
      same,
      number: before.number,
      pack,
      size: after.size,
      ground: after.ground,
      kept: map.filter((place) => place !== null).length,
      lost: map.flatMap((place, pair) => (place === null ? [`${letters[pair]}${letters[pair + 1]}`] : [])),
      fresh: pack.letters.length - 1 - map.filter((place) => place !== null).length,
      drafts,
      proofs,
      references: references.length,
    };
  },
});

export type PlannedChange = {
  exercise: { id: string; courseId: string; state: string };
  before: SpecimenView;
  after: NewVersion;
  pack: Pack;
  /** For each pair of the version in use its place in the new one, or null. */
  map: (number | null)[];
  /** Nothing would change at all. */
  same: boolean;
};

/** What a change of a specimen would make, without making it. */
async function planChange(context: Context, specimenId: string, typed: TypedSpecimen): Promise<PlannedChange> {
  const row = await context.data.specimens.find(specimenId);
  if (!row) throw notFound();
  const before = specimenView(row);
  const { version, pack } = await makeVersion(context, typed);
  const map = pairMap(lineOf(before.pack), lineOf(pack));
  const after = { ...version, details: { ...version.details, start: movedStart(before, pack, map) } };
  const { id, courseId, state } = row.exercise;
  return { exercise: { id, courseId, state }, before, after, pack, map, same: isSame(before, after) };
}

/** The start of a line on its next version: made anew where it was made from the line, else moved pair by pair. */
function movedStart(before: SpecimenView, pack: Pack, map: readonly (number | null)[]): LineStart | null {
  const { start } = before.details;
  if (start === null) return null;
  if (start.made === 'area') return { made: 'area', spacing: madeStart(pack, { kind: 'area' }) };
  const { tracking, offsets } = start.spacing;
  const spacing = { tracking, offsets: moveByMap(offsets, map, pack.letters.length - 1, 0) };
  return isUntouched(spacing, builtInSpacing(spacing.offsets.length)) ? null : { made: start.made, spacing };
}

const startOfView = ({ details, pairCount }: SpecimenView): Spacing =>
  details.start?.spacing ?? builtInSpacing(pairCount);

const isSame = (before: SpecimenView, after: NewVersion): boolean =>
  before.packSha === after.packSha &&
  before.size.value === after.size.value &&
  before.size.unit === after.size.unit &&
  before.ground === after.ground &&
  before.details.remark === after.details.remark;
