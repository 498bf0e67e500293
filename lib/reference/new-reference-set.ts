import type { Context } from '@/lib/access/operation';
import { compareAgain, type ComparedAgain } from './compare';
import { freezeReferences, type Frozen } from './freeze-references';

/** Freezes the references of an exercise and, where that made a new set, compares all its proofs with it. */
export async function newReferenceSet(
  context: Context,
  exerciseId: string,
): Promise<Frozen & { compared: ComparedAgain | null }> {
  const frozen = await freezeReferences(context, exerciseId);
  if (!frozen.fresh || frozen.referenceSetId === null) return { ...frozen, compared: null };
  return { ...frozen, compared: await compareAgain(context.data, exerciseId, frozen.referenceSetId, context.now) };
}
