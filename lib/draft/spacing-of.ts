import * as z from 'zod/mini';
import { offsetSchema, type Spacing } from '@/shared/schemas/spacing';

const offsetsSchema = z.array(offsetSchema);

/** A stored spacing, checked on the way out. @throws ZodError when the row holds something else. */
export const spacingOf = (row: { tracking: number; offsets: string }): Spacing => ({
  tracking: row.tracking,
  offsets: z.parse(offsetsSchema, JSON.parse(row.offsets)),
});

/** The face as it comes: nothing added to any of `pairs` gaps. */
export const builtInSpacing = (pairs: number): Spacing => ({
  tracking: 0,
  offsets: Array.from({ length: pairs }, () => 0),
});
