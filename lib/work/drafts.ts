import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { isConflict, retryOnConflict, TryAgain } from '@/lib/data/retry';
import { type SaveAnswer, type SaveRequest, saveRequestSchema } from '@/shared/schemas/draft';
import { spacingOf } from '@/lib/rows/spacing';

/** A draft as the server has it now, for a bench that wants to know before it writes. */
export const getDraft = operation({
  name: 'get-draft',
  allow: 'draft:keep',
  input: z.strictObject({ draftId: z.string().check(z.minLength(1), z.maxLength(64)) }),
  run: async ({ data }, { draftId }) => {
    const draft = await data.drafts.byId(draftId);
    if (!draft) throw notFound();
    return { version: draft.version, spacing: spacingOf(draft) };
  },
});

/**
 * Stores one change of a draft. Sent again it is stored once and gets the same answer. Result: the version it made, or
 * what the server has instead when another change was first.
 */
export const saveDraft = operation({
  name: 'save-draft',
  allow: 'draft:keep',
  input: saveRequestSchema,
  run: ({ data, now }, change): Promise<SaveAnswer> =>
    // Writes first and reads only on failure: nearly every change follows the present version.
    retryOnConflict(async () => {
      const taken = await data.drafts
        .keep(change, now)
        .then((stored) => (stored ? null : new TryAgain()), conflictOnly);
      return taken === null ? { version: change.baseVersion + 1 } : instead(data, change, taken);
    }),
});

/** The answer to a change that was not stored. @throws `taken` when by now it could be: it is tried again. */
async function instead(data: ScopedData, change: SaveRequest, taken: unknown): Promise<SaveAnswer> {
  const draft = await data.drafts.current(change.draftId);
  if (!draft) throw notFound();
  const spacing = spacingOf(draft);
  refuseOtherLength(change.spacing.offsets.length, spacing.offsets.length);
  if (draft.version === change.baseVersion) throw taken;
  const stored = await data.drafts.change(change.draftId, change.clientId, change.seq);
  return stored ? { version: stored.baseVersion + 1 } : { conflict: { version: draft.version, spacing } };
}

function conflictOnly(error: unknown): unknown {
  if (!isConflict(error)) throw error;
  return error;
}

function refuseOtherLength(given: number, expected: number): void {
  if (given === expected) return;
  throw new AppError(
    'INVALID',
    `This line has ${expected} gaps, and ${given} offsets were sent. Reload the bench; your changes are kept on this device.`,
  );
}
