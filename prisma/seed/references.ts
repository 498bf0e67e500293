import type { Caller } from '@/lib/access/caller';
import { listReferences, saveReference } from '@/lib/reference/references';
import { measureLine } from '@/shared/scoring';
import type { SpecimenView } from '@/lib/rows/specimen';
import { reasons } from './exercise-words';
import { straying } from './straying';

type Teachers = { exerciseId: string; instructor: Caller; assistant: Caller };

/** Lines (counted from 0) that each teacher has set, and the one the instructor set twice. The last is left without. */
const byInstructor = [0, 1, 2, 3, 5, 7];
const byAssistant = [0, 2, 4];
const twice = 0;

/**
 * Invented hands for the demo: each teacher goes part of the way that the measure points, and strays by a few
 * thousandths as a hand does. They are examples to look at, not anybody's judgement.
 */
export async function seedReferences({ exerciseId, instructor, assistant }: Teachers, now: Date): Promise<void> {
  const { specimens } = await listReferences(instructor, { exerciseId }, { now });
  for (const at of byInstructor)
    await set(instructor, specimens[at]!, { slot: 1, share: 0.9, tracking: -6, seed: 11 + at }, now);
  for (const at of byAssistant)
    await set(assistant, specimens[at]!, { slot: 1, share: 0.7, tracking: -14, seed: 31 + at }, now);
  await set(instructor, specimens[twice]!, { slot: 2, share: 0.9, tracking: -8, seed: 71 }, now);
}

type Hand = { slot: number; share: number; tracking: number; seed: number };

async function set(
  caller: Caller,
  specimen: SpecimenView,
  { slot, share, tracking, seed }: Hand,
  now: Date,
): Promise<void> {
  const { pack, size, ground, versionId } = specimen;
  const { pairs } = measureLine(pack, { tracking: 0, offsets: pack.builtIn.map(() => 0) }, { size, ground });
  const stray = straying(seed, 3);
  const offsets = pairs.map((pair) =>
    pair.group === 'word-space' ? 0 : Math.round((pair.suggestion ?? 0) * share + stray()),
  );
  await saveReference(
    caller,
    {
      specimenVersionId: versionId,
      slot,
      baseVersion: 0,
      draftId: `${versionId}.${slot}`,
      clientId: 'seed',
      seq: 1,
      spacing: { tracking, offsets },
      tolerances: pairs.map((pair) => (pair.group === 'word-space' ? 30 : null)),
      reasons: pairs.map((pair) => (slot === 1 ? (reasons[`${pair.left}${pair.right}`] ?? '') : '')),
    },
    { now },
  );
}
