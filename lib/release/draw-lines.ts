import * as z from 'zod/mini';
import type { ScopedData } from '@/lib/data';
import { spacingOf } from '@/lib/rows/spacing';
import { settingOf } from '@/lib/reference/compare';
import { type Pack, packSchema } from '@/shared/schemas/pack';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';

/** A line of a proof as it is drawn. */
export type DrawnLine = {
  specimenId: string;
  specimenVersionId: string;
  pack: Pack;
  spacing: Spacing;
  size: Size;
  ground: Ground;
};

/** The lines of a proof, in order, ready to be drawn; for those who may see the proof. */
export async function drawLines(data: ScopedData, proofId: string): Promise<DrawnLine[]> {
  const proof = await data.proofs.byId(proofId);
  if (!proof) return [];
  return proof.items
    .toSorted((one, other) => one.specimenVersion.specimen.position - other.specimenVersion.specimen.position)
    .map(({ specimenVersion: version, ...item }) => ({
      specimenId: version.specimen.id,
      specimenVersionId: version.id,
      pack: z.parse(packSchema, JSON.parse(version.pack.payload)),
      spacing: spacingOf(item),
      ...settingOf(version),
    }));
}
