'use server';
import { formAction } from '@/lib/http/form-action';
import { beginMarking } from '@/lib/review/counted';
import { skipProof, takeNext } from '@/lib/review/next';

const queueOf = (form: FormData) =>
  `/exercises/${String(form.get('exerciseId'))}/rounds/${String(form.get('roundNumber'))}/critique`;
const sectionOf = (form: FormData) =>
  form.get('section') ? `section=${encodeURIComponent(String(form.get('section')))}` : '';

export const beginMarkingAction = formAction(beginMarking, {
  read: (form) => ({
    exerciseId: form.get('exerciseId'),
    roundNumber: form.get('roundNumber'),
    version: form.get('version'),
  }),
  then: (_result, form) => queueOf(form),
});

export const takeNextAction = formAction(takeNext, {
  read: (form) => ({
    exerciseId: form.get('exerciseId'),
    roundNumber: form.get('roundNumber'),
    section: form.get('section') || null,
    after: null,
  }),
  then: ({ proof, line }, form) =>
    proof === null || line === null
      ? `${queueOf(form)}?none&${sectionOf(form)}`
      : `/critique/${proof}/${line}?${sectionOf(form)}`,
});

export const takeUpAction = formAction(skipProof, {
  read: (form) => ({ proof: form.get('proof'), to: 'taken-up' }),
  then: ({ exerciseId, roundNumber }) => `/exercises/${exerciseId}/rounds/${roundNumber}/critique`,
});
