import type { ProofLine } from '@/lib/data/proofs';
import { measureLine } from '@/shared/measure';
import type { Pack } from '@/shared/schemas/pack';
import { groundSchema, sizeSchema, type Size, type Spacing } from '@/shared/schemas/spacing';
import { compareLine } from '@/shared/scoring';
import type { ReferenceSpacing } from '@/shared/schemas/measure';
import * as z from 'zod/mini';

export type LineVersion = { id: string; size: number; unit: string; ground: string };

/** Where and on what a specimen version is read, checked on the way out of the database. */
export const settingOf = (version: Omit<LineVersion, 'id'>) => ({
  size: z.parse(sizeSchema, { value: version.size, unit: version.unit }),
  ground: z.parse(groundSchema, version.ground),
});

/** Measures one line as it was sent, and compares it with the references where there are any. The same code as on the bench. */
export function measureProofLine(
  version: LineVersion,
  pack: Pack,
  spacing: Spacing,
  references: readonly ReferenceSpacing[],
  smallestSize: Size | null = null,
): ProofLine {
  const measure = measureLine(pack, spacing, { ...settingOf(version), smallestSize });
  const comparison = references.length > 0 ? compareLine(measure, [...references]) : null;
  return { specimenVersionId: version.id, spacing, measure, comparison };
}
