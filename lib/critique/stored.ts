import * as z from 'zod/mini';
import { levelsSchema, type Level } from '@/shared/schemas/criterion';
import {
  storedComparisonSchema,
  storedMeasureSchema,
  type StoredComparison,
  type StoredMeasure,
} from '@/shared/schemas/stored-figures';
import { suggestionSchema } from '@/shared/schemas/note';

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
