import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { spacingOf } from './spacing-of';

/** A draft as the server has it now, for a bench that wants to know before it writes. */
export const readDraft = operation({
  name: 'read-draft',
  allow: 'draft:keep',
  input: z.strictObject({ draftId: z.string().check(z.minLength(1), z.maxLength(64)) }),
  run: async ({ data }, { draftId }) => {
    const draft = await data.drafts.byId(draftId);
    if (!draft) throw notFound();
    return { version: draft.version, spacing: spacingOf(draft) };
  },
});
