import * as z from 'zod/mini';
import { exerciseSettingsSchema } from '@/shared/schemas/exercise';
import type { ReferenceSpacing } from '@/shared/schemas/measure';
import { referenceView } from '../rows/reference';
import { byVersion } from './visible-references';

/**
 * The references of a frozen set as the core compares with them, by specimen version. `settings`: the exercise's, as stored.
 * Authors go by their member's id: a comparison is kept for good, and a name is put in only when it is shown.
 */
export function frozenReferences(
  items: readonly Parameters<typeof referenceView>[0][],
  settings: string,
): Map<string, ReferenceSpacing[]> {
  const { tolerance } = z.parse(exerciseSettingsSchema, JSON.parse(settings));
  return byVersion(
    items.map(referenceView).map((view) => ({ ...view, author: view.authorId })),
    tolerance,
  );
}
