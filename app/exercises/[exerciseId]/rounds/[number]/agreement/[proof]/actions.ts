'use server';
import { formAction } from '@/lib/http/form-action';
import { settleMark } from '@/lib/review/settle';
import { readSettled } from './read-settled';

export const settleAction = formAction(settleMark, {
  read: readSettled,
  then: ({ exerciseId, roundNumber, token }) =>
    `/exercises/${exerciseId}/rounds/${roundNumber}/agreement/${token}?settled=1`,
});
