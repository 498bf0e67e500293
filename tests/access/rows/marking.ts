import { only, type Rows } from '../row';

export const markingRows: Rows = {
  'claim-proof': { input: ({ ids }) => ({ proof: ids.nextProof }), answers: only.staff },
  'unclaim-proof': { input: ({ ids }) => ({ proof: ids.nextProof }), answers: only.staff },
  'skip-proof': { input: ({ ids }) => ({ proof: ids.nextProof, to: 'skipped' }), answers: only.staff },
  'claim-next-proof': {
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
  'get-second-queue': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 2 }), answers: only.staff },
  'get-agreement': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 2 }), answers: only.staff },
  // One person marks this proof: there is nothing to compare, and nothing to settle.
  'get-mark-difference': {
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
