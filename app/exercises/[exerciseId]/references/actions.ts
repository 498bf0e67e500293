'use server';

import { formAction } from '@/lib/http/form-action';
import { acceptReference, applyReferences, removeReference } from '@/lib/reference/references';
import { carryReference } from '@/lib/reference/carry';
import { counted } from '@/shared/text/number';

export const enforceReferencesAction = formAction(applyReferences, {
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

type Enforced = {
  number: number;
  fresh: boolean;
  compared: { proofLines: number; outsideBefore: number; outsideNow: number; newlyCompared: number } | null;
};

/** What freezing the references did, in words. */
function enforcedWords({ number, fresh, compared }: Enforced): string {
  if (!fresh) return 'Nothing has changed since the last set, so nothing was compared again.';
  if (!compared || compared.proofLines === 0)
    return `Set ${number} is in force. No line of a proof has a reference in it, so nothing was compared.`;
  const { proofLines, outsideBefore, outsideNow, newlyCompared } = compared;
  const first = newlyCompared > 0 ? `, ${newlyCompared} of them for the first time` : '';
  return `Set ${number} is in force. ${counted(proofLines, 'line')} of proofs ${proofLines === 1 ? 'was' : 'were'} compared with it${first}: ${counted(outsideNow, 'remark')} outside a tolerance now, ${outsideBefore} before.`;
}
