'use server';

import { finishGuidedLine } from '@/lib/account/account';
import { formAction } from '@/lib/http/form-action';
import { plainAction } from '@/lib/http/plain-action';
import { sendProof } from '@/lib/work/proofs';

export const sendProofAction = formAction(sendProof, {
  read: readSendProof,
  then: ({ proofId }) => `/proofs/${proofId}?sent=1`,
});

export const finishGuidedLineAction = plainAction(finishGuidedLine, (how: 'done' | 'skipped') => ({ how }));

/** The fields of the form that sends a proof; the operation checks them. */
function readSendProof(form: FormData): unknown {
  return {
    exerciseId: form.get('exerciseId'),
    requestKey: form.get('requestKey'),
    reasoning: form.get('reasoning') ?? '',
    zoom: Number(form.get('zoom') ?? 1),
    drafts: parsed(form.get('drafts')),
  };
}

function parsed(value: FormDataEntryValue | null): unknown {
  if (typeof value !== 'string') return undefined;
  try {
    return JSON.parse(value);
  } catch {
    return value;
  }
}
