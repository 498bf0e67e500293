import { notFound } from '@/lib/access/errors';
import type { Context } from '@/lib/access/operation';
import type { NewVersion } from '@/lib/data/specimens';
import { pairMap } from '@/shared/exercise/pair-map';
import type { Pack } from '@/shared/schemas/pack';
import { makeVersion, type TypedSpecimen } from './make-version';
import { lineOf, specimenView, type SpecimenView } from '../rows/specimen';

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
export async function planChange(context: Context, specimenId: string, typed: TypedSpecimen): Promise<PlannedChange> {
  const row = await context.data.specimens.find(specimenId);
  if (!row) throw notFound();
  const before = specimenView(row);
  const { version: after, pack } = await makeVersion(context, typed);
  const map = pairMap(lineOf(before.pack), lineOf(pack));
  const { id, courseId, state } = row.exercise;
  return { exercise: { id, courseId, state }, before, after, pack, map, same: isSame(before, after) };
}

const isSame = (before: SpecimenView, after: NewVersion): boolean =>
  before.packSha === after.packSha &&
  before.size.value === after.size.value &&
  before.size.unit === after.size.unit &&
  before.ground === after.ground &&
  before.details.remark === after.details.remark;
