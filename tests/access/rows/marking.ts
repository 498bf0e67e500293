import { only, type Rows } from '../row';

export const markingRows: Rows = {
  'claim-proof': { input: ({ ids }) => ({ proof: ids.nextProof }), answers: only.staff },
  'give-back-proof': { input: ({ ids }) => ({ proof: ids.nextProof }), answers: only.staff },
  'skip-proof': { input: ({ ids }) => ({ proof: ids.nextProof, to: 'skipped' }), answers: only.staff },
  'take-next': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 2, section: null, after: null }),
    answers: only.staff,
  },
  'give-mark': {
    input: ({ ids }) => ({
      proofId: ids.nextProof,
      criterionVersionId: ids.criterionVersion,
      level: 1,
      version: -1,
      why: '',
    }),
    answers: only.staff,
  },
  // The task of this proof is the assistant's, who alone may open it again.
  'finish-proof': {
    input: ({ ids }) => ({ proof: ids.proof, to: 'open' }),
    answers: { ...only.staff, instructor: 'CONFLICT' },
  },
  'set-second-marking': {
    input: ({ ids }) => ({ roundId: ids.nextRound, version: 0, which: 'share', percent: 30 }),
    answers: only.instructor,
  },
  'show-second-queue': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 2 }), answers: only.staff },
  'show-agreement': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 2 }), answers: only.staff },
  // One person marks this proof: there is nothing to lay side by side, and nothing to settle.
  'show-difference': {
    input: ({ ids }) => ({ proof: ids.nextProof }),
    answers: { ...only.staff, assistant: 'NOT_FOUND', instructor: 'NOT_FOUND' },
  },
  'settle-mark': {
    input: ({ ids }) => ({
      proof: ids.nextProof,
      criterionVersionId: ids.criterionVersion,
      level: 1,
      version: -1,
      why: 'We looked again together.',
    }),
    answers: { ...only.staff, assistant: 'CONFLICT', instructor: 'CONFLICT' },
  },
  'choose-proof': { input: ({ ids }) => ({ proof: ids.nextProof }), answers: only.instructor },
};
