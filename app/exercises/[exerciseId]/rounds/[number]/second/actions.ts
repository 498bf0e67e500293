'use server';
import { formAction } from '@/lib/http/form-action';
import { skipProof } from '@/lib/review/next';

export const takeUpSecondAction = formAction(skipProof, {
  read: (form) => ({ proof: form.get('proof'), to: 'taken-up' }),
  then: ({ exerciseId, roundNumber }) => `/exercises/${exerciseId}/rounds/${roundNumber}/second`,
});
