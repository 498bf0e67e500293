'use server';
import { formAction } from '@/lib/http/form-action';
import { chooseProof } from '@/lib/review/counted';

export const chooseProofAction = formAction(chooseProof, {
  read: (form) => ({ proof: form.get('proof') }),
  then: (_result, form) =>
    `/critique/${encodeURIComponent(String(form.get('proof')))}/${encodeURIComponent(String(form.get('specimenId')))}`,
});
