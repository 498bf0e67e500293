import * as z from 'zod/mini';
import { type Level, levelsSchema } from '@/shared/schemas/criterion';
import { suggestionSchema } from '@/shared/schemas/note';
import { offsetSchema, type Spacing } from '@/shared/schemas/spacing';
import {
  type StoredComparison,
  storedComparisonSchema,
  type StoredMeasure,
  storedMeasureSchema,
} from '@/shared/schemas/stored-figures';

const offsetsSchema = z.array(offsetSchema);

/** A stored spacing, checked on the way out. @throws ZodError when the row holds something else. */
export const spacingOf = (row: { tracking: number; offsets: string }): Spacing => ({
  tracking: row.tracking,
  offsets: z.parse(offsetsSchema, JSON.parse(row.offsets)),
});

/** The face's own spacing: nothing added to any of `pairs` gaps. */
export const builtInSpacing = (pairs: number): Spacing => ({
  tracking: 0,
  offsets: Array.from({ length: pairs }, () => 0),
});

/** Stored payloads, checked on the way out. Each throws ZodError when the row holds something else. */
export const measureOf = (row: { payload: string }): StoredMeasure =>
  z.parse(storedMeasureSchema, JSON.parse(row.payload));
export const comparisonOf = (row: { payload: string }): StoredComparison =>
  z.parse(storedComparisonSchema, JSON.parse(row.payload));
export const levelsOf = (row: { levels: string }): Level[] => z.parse(levelsSchema, JSON.parse(row.levels));
export const suggestionOf = (row: { suggestion: string | null }): number[] | null =>
  row.suggestion === null ? null : z.parse(suggestionSchema, JSON.parse(row.suggestion));

const pairMapSchema = z.nullable(z.array(z.nullable(z.int())));
export const pairMapOf = (row: { pairMap: string | null }): (number | null)[] | null =>
  row.pairMap === null ? null : z.parse(pairMapSchema, JSON.parse(row.pairMap));
