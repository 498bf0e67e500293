import * as z from 'zod/mini';
import { reasonSchema, toleranceSchema } from '@/shared/schemas/reference';
import { offsetSchema } from '@/shared/schemas/spacing';

const offsets = z.array(offsetSchema);
const tolerances = z.array(toleranceSchema);
const reasons = z.array(reasonSchema);

type Row = {
  id: string;
  specimenVersionId: string;
  authorId: string;
  slot: number;
  tracking: number;
  offsets: string;
  tolerances: string;
  reasons: string;
  author: { user: { name: string } | null };
};

/** A reference, or one frozen in a set, checked on the way out. */
export const referenceView = (row: Row) => ({
  id: row.id,
  specimenVersionId: row.specimenVersionId,
  authorId: row.authorId,
  author: row.author.user?.name ?? 'a former member',
  slot: row.slot,
  spacing: { tracking: row.tracking, offsets: offsets.parse(JSON.parse(row.offsets)) },
  tolerances: tolerances.parse(JSON.parse(row.tolerances)),
  reasons: reasons.parse(JSON.parse(row.reasons)),
});
export type ReferenceView = ReturnType<typeof referenceView>;

/** Only carried over from another specimen, and not looked at by its author since: no reference yet. */
export const isStarted = (row: { carriedFromId: string | null }): boolean => row.carriedFromId !== null;
