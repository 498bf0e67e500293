import type { Caller } from '@/lib/access/caller';
import { listReferences, saveReference } from '@/lib/reference/references';
import type { SpecimenView } from '@/lib/rows/specimen';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { straying } from './habits';
import { gapNames, type OwnSpacing, ownSpacings } from './own-spacing';

type Authors = { exerciseId: string; instructor: Caller; assistant: Caller };

/**
 * Lines (counted from 0) that each of the two has set, and the one the instructor set twice. The rest have no
 * reference.
 */
const byInstructor = [0, 1, 2, 3, 5, 7];
const byAssistant = [0, 2, 4];
const twice = 0;

/** How near each invented author comes to the instructor's own spacing. */
export const authors: Record<'instructor' | 'again' | 'assistant', Author> = {
  instructor: { share: 1, tracking: 0, wander: 1.5, seed: 11 },
  again: { share: 1, tracking: 1, wander: 3, seed: 71 },
  assistant: { share: 0.8, tracking: -3, wander: 3, seed: 31 },
};
type Author = { share: number; tracking: number; wander: number; seed: number };

/**
 * References with invented habits: the face's own kerning, tracked for the size, with a few small changes and why. They
 * are examples to look at, not a person's judgement.
 */
export async function seedReferences({ exerciseId, instructor, assistant }: Authors, now: Date): Promise<void> {
  const { specimens } = await listReferences(instructor, { exerciseId }, { now });
  const set = (caller: Caller, place: number, slot: number, author: Author) =>
    saveOwn(caller, specimens[place]!, { slot, author, own: ownSpacings[place]!, place }, now);
  for (const at of byInstructor) await set(instructor, at, 1, authors.instructor);
  for (const at of byAssistant) await set(assistant, at, 1, authors.assistant);
  await set(instructor, twice, 2, authors.again);
}

/** One author's spacing of a line, by its place in the exercise. */
export function referenceBy(
  { share, tracking, wander, seed }: Author,
  pack: Pack,
  own: OwnSpacing,
  place: number,
): Spacing {
  const stray = straying(seed + place, wander);
  return {
    tracking: own.tracking + tracking,
    offsets: gapNames(pack).map((name) =>
      name === '' ? 0 : Math.round(share * (own.changes[name]?.by ?? 0) + stray()),
    ),
  };
}

/** Stores one author's reference of a line. */
export async function saveOwn(
  caller: Caller,
  { pack, versionId }: SpecimenView,
  { slot, author, own, place }: { slot: number; author: Author; own: OwnSpacing; place: number },
  now: Date,
): Promise<void> {
  const spacing = referenceBy(author, pack, own, place);
  const names = gapNames(pack);
  await saveReference(
    caller,
    {
      specimenVersionId: versionId,
      slot,
      baseVersion: 0,
      draftId: `${versionId}.${slot}`,
      clientId: 'seed',
      seq: 1,
      spacing,
      tolerances: names.map((name) => (name === '' ? 30 : null)),
      reasons: names.map((name) => (slot === 1 ? (own.changes[name]?.why ?? '') : '')),
    },
    { now },
  );
}
