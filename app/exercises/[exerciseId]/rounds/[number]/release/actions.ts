'use server';
import { formAction } from '@/lib/http/form-action';
import { releaseRound } from '@/lib/release/release-round';
import { readChosen } from './read-chosen';

export const releaseAction = formAction(releaseRound, {
  read: readChosen,
  then: ({ released, corrected }, form) =>
    `/exercises/${String(form.get('exerciseId'))}/rounds/${String(form.get('roundNumber'))}/release?released=${released}&corrected=${corrected}`,
});
