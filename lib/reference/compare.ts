import * as z from 'zod/mini';
import type { Context } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import type { ProofLine } from '@/lib/data/proofs';
import { logError } from '@/lib/log';
import { spacingOf } from '@/lib/rows/spacing';
import type { ReferenceSpacing } from '@/shared/schemas/measure';
import { type Pack, packSchema } from '@/shared/schemas/pack';
import { groundSchema, type Size, sizeSchema, type Spacing } from '@/shared/schemas/spacing';
import { compareLine, measureLine, reportLine } from '@/shared/scoring';
import { freezeReferences, type FrozenReferences, frozenReferences } from './sets';

type LineVersion = { id: string; size: number; unit: string; ground: string };

/** Where and on what a specimen version is read, checked on the way out of the database. */
export const sizeAndGroundOf = (version: Omit<LineVersion, 'id'>) => ({
  size: z.parse(sizeSchema, { value: version.size, unit: version.unit }),
  ground: z.parse(groundSchema, version.ground),
});

/**
 * Measures one line as it was sent, and compares it with the references where there are any. The same code as on the
 * bench. A line that can't be measured is written to the log and goes without: no measurement may keep a proof from
 * being sent.
 */
export function measureProofLine(
  version: LineVersion,
  pack: Pack,
  spacing: Spacing,
  references: readonly ReferenceSpacing[],
  smallestSize: Size | null = null,
): ProofLine {
  const measure = attempted(() => reportLine(pack, spacing, { ...sizeAndGroundOf(version), smallestSize }));
  const compares = measure !== null && references.length > 0;
  const comparison = compares ? attempted(() => compareLine(measure, [...references])) : null;
  return { specimenVersionId: version.id, spacing, measure, comparison };
}

function attempted<T>(measuring: () => T): T | null {
  try {
    return measuring();
  } catch (error) {
    logError(error);
    return null;
  }
}

/** What a new set of references did to the comparisons of an exercise. */
type ComparedAgain = {
  referenceSet: number;
  proofLines: number;
  /** Pairs outside the tolerance of the nearest reference: with the set before, and with this one. */
  outsideBefore: number;
  outsideNow: number;
  /** Lines that had no comparison before. */
  newlyCompared: number;
};

const atOnce = 200;

/**
 * Compares every proof of an exercise with a new set of references, in one go; earlier comparisons stay as they are.
 * Lines without a reference in the set get none. The record of what changed goes to the course's log.
 */
async function compareAgain(data: ScopedData, exerciseId: string, setId: string, now: Date): Promise<ComparedAgain> {
  const set = await data.referenceSets.find(setId);
  const settings = await data.proofs.settingsOf(exerciseId);
  if (!set || settings === null)
    throw new Error(`compareAgain: no set ${setId} of exercise ${exerciseId} in this actor's reach.`);
  const referencesOf = frozenReferences(set.items, settings);
  const counts: ComparedAgain = {
    referenceSet: set.number,
    proofLines: 0,
    outsideBefore: 0,
    outsideNow: 0,
    newlyCompared: 0,
  };
  const packs = new Map<string, ReturnType<typeof parsePack>>();
  for (let after = ''; ;) {
    const items = await data.proofs.itemsAfter(exerciseId, setId, after, atOnce);
    if (items.length === 0) {
      await data.classSummary.forget(exerciseId);
      return counts;
    }
    after = items.at(-1)!.id;
    const rows = items.flatMap((item) => {
      const { specimenVersion: version } = item;
      const references = referencesOf.get(version.id) ?? [];
      if (references.length === 0) return [];
      const pack = packs.get(version.packSha) ?? parsePack(version.pack.payload);
      packs.set(version.packSha, pack);
      const comparison = attempted(() =>
        compareLine(measureLine(pack, spacingOf(item), sizeAndGroundOf(version)), references),
      );
      if (comparison === null) return [];
      const before = item.comparisons[0];
      counts.proofLines += 1;
      counts.outsideNow += comparison.outside;
      if (before) counts.outsideBefore += z.parse(outsideOnly, JSON.parse(before.payload)).outside;
      else counts.newlyCompared += 1;
      return [{ proofItemId: item.id, comparison }];
    });
    await data.proofs.addComparisons(setId, rows, now);
  }
}

const parsePack = (payload: string) => z.parse(packSchema, JSON.parse(payload));
const outsideOnly = z.object({ outside: z.int() });

/** Freezes the references of an exercise and, where that made a new set, compares all its proofs with it. */
export async function newReferenceSet(
  context: Context,
  exerciseId: string,
): Promise<FrozenReferences & { compared: ComparedAgain | null }> {
  const frozen = await freezeReferences(context, exerciseId);
  if (!frozen.fresh || frozen.referenceSetId === null) return { ...frozen, compared: null };
  return { ...frozen, compared: await compareAgain(context.data, exerciseId, frozen.referenceSetId, context.now) };
}
