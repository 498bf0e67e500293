'use server';
import { formAction } from '@/lib/http/form-action';
import { sendProof } from '@/lib/work/proofs';
import { readSendProof } from './read-send-proof';

export const sendProofAction = formAction(sendProof, {
  read: readSendProof,
  then: ({ proofId }) => `/proofs/${proofId}?sent=1`,
});
