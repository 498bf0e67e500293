'use server';

import { beginMarking } from '@/lib/review/counted';
import { formAction } from '@/lib/http/form-action';
import { settleMark } from '@/lib/review/settle';
import { skipProof, claimNextProof } from '@/lib/review/next';
import { releaseRound } from '@/lib/release/release';

const queueOf = (form: FormData) =>
  `/exercises/${String(form.get('exerciseId'))}/rounds/${String(form.get('roundNumber'))}/critique`;
const sectionOf = (form: FormData) =>
  form.get('section') ? `section=${encodeURIComponent(String(form.get('section')))}` : '';

export const beginMarkingAction = formAction(beginMarking, {
  read: (form) => ({
    exerciseId: form.get('exerciseId'),
    roundNumber: form.get('roundNumber'),
    version: form.get('version'),
    section: form.get('section') || null,
  }),
  then: (_result, form) => queueOf(form),
});

export const takeNextAction = formAction(claimNextProof, {
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

export const takeUpSecondAction = formAction(skipProof, {
  read: (form) => ({ proof: form.get('proof'), to: 'taken-up' }),
  then: ({ exerciseId, roundNumber }) => `/exercises/${exerciseId}/rounds/${roundNumber}/second`,
});

export const settleAction = formAction(settleMark, {
  read: readSettled,
  then: ({ exerciseId, roundNumber, token }) =>
    `/exercises/${exerciseId}/rounds/${roundNumber}/agreement/${token}?settled=1`,
});

/** The operation's input from the form: a level by its index, or none to undo the settlement. */
function readSettled(form: FormData): unknown {
  const level = form.get('level');
  return {
    proof: form.get('proof'),
    criterionVersionId: form.get('criterionVersionId'),
    version: Number(form.get('version')),
    // Without a choice the value stays undefined, so that the form says what is missing.
    level: level === 'none' ? null : level === null ? undefined : Number(level),
    why: String(form.get('why') ?? ''),
  };
}

export const releaseAction = formAction(releaseRound, {
  read: readChosen,
  then: ({ released, corrected }, form) =>
    `/exercises/${String(form.get('exerciseId'))}/rounds/${String(form.get('roundNumber'))}/release?released=${released}&corrected=${corrected}`,
});

/**
 * The operation's input from the plan's form: each ticked box holds the proof's token and the digest of what was shown.
 */
function readChosen(form: FormData): unknown {
  const to = form.getAll('to').map((value) => {
    const [proofId, seen] = String(value).split(' ');
    return { proofId, seen };
  });
  return { exerciseId: form.get('exerciseId'), roundNumber: Number(form.get('roundNumber')), to };
}
