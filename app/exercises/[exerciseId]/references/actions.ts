'use server';
import { formAction } from '@/lib/http/form-action';
import { acceptReference } from '@/lib/reference/accept-reference';
import { carryReference } from '@/lib/reference/carry-reference';
import { enforceReferences } from '@/lib/reference/enforce-references';
import { removeReference } from '@/lib/reference/remove-reference';
import { enforcedWords } from './enforced-words';

export const enforceReferencesAction = formAction(enforceReferences, {
  read: (form) => ({ exerciseId: String(form.get('exerciseId') ?? '') }),
  done: enforcedWords,
});

export const carryReferenceAction = formAction(carryReference, {
  read: (form) => ({
    referenceId: String(form.get('referenceId') ?? ''),
    specimenIds: form.getAll('specimenIds').map(String),
    replace: form.get('replace') === 'yes',
  }),
  then: ({ exerciseId, carried, left }) =>
    `/exercises/${exerciseId}/references?carried=${carried.length}&left=${left.length}`,
});

export const acceptReferenceAction = formAction(acceptReference, {
  read: (form) => ({ referenceId: String(form.get('referenceId') ?? '') }),
  done: () => 'It is a reference now.',
});

export const removeReferenceAction = formAction(removeReference, {
  read: (form) => ({ referenceId: String(form.get('referenceId') ?? '') }),
  then: ({ exerciseId }) => `/exercises/${exerciseId}/references`,
});
