import * as z from 'zod/mini';
import { exerciseSettingsSchema } from '@/shared/schemas/exercise';
import type { ReferenceSpacing } from '@/shared/schemas/measure';
import { reasonSchema, toleranceSchema } from '@/shared/schemas/reference';
import { offsetSchema } from '@/shared/schemas/spacing';

type SetItem = {
  specimenVersionId: string; slot: number; tracking: number; offsets: string; tolerances: string; reasons: string;
  author: { user: { name: string } | null };
};

/**
 * The references of one specimen version in a frozen set, as the core takes them: the first take of each author;
 * where a pair has no tolerance of its own, the exercise's.
 */
export function referencesOf(set: { items: readonly SetItem[] } | null, specimenVersionId: string, settings: string): ReferenceSpacing[] {
  const { tolerance } = z.parse(exerciseSettingsSchema, JSON.parse(settings));
  return (set?.items ?? [])
    .filter((item) => item.specimenVersionId === specimenVersionId && item.slot === 1)
    .map((item) => ({
      author: item.author.user?.name ?? 'a former member',
      tracking: item.tracking,
      offsets: z.parse(z.array(offsetSchema), JSON.parse(item.offsets)),
      tolerances: z.parse(z.array(toleranceSchema), JSON.parse(item.tolerances)).map((own) => own ?? tolerance),
      reasons: z.parse(z.array(reasonSchema), JSON.parse(item.reasons)),
    }));
}
