import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { saveRequestSchema, type SaveAnswer } from '@/shared/editing/wire';
import { spacingOf } from './spacing-of';

/**
 * Keeps one change of a draft. Sent again it is kept once and answered the same.
 * Result: the version it made, or what the server has instead when another change came first.
 */
export const saveDraft = operation({
  name: 'save-draft',
  allow: 'draft:keep',
  input: saveRequestSchema,
  run: ({ data, now }, change): Promise<SaveAnswer> =>
    retryOnConflict(async () => {
      const draft = await data.drafts.standing(change.draftId);
      if (!draft) throw notFound();
      const spacing = spacingOf(draft);
      refuseOtherLength(change.spacing.offsets.length, spacing.offsets.length);
      if (draft.version !== change.baseVersion) {
        const kept = await data.drafts.change(change.draftId, change.clientId, change.seq);
        return kept ? { version: kept.baseVersion + 1 } : { conflict: { version: draft.version, spacing } };
      }
      await data.drafts.keep(draft, change, now);
      return { version: change.baseVersion + 1 };
    }),
});

function refuseOtherLength(given: number, expected: number): void {
  if (given === expected) return;
  throw new AppError('INVALID', `This line has ${expected} gaps, and ${given} offsets were sent. Reload the bench; your changes are kept on this device.`);
}
