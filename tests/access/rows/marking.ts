import { only, type Rows } from '../row';

export const markingRows: Rows = {
  'claim-proof': { input: ({ ids }) => ({ proof: ids.nextProof }), answers: only.staff },
  'give-back-proof': { input: ({ ids }) => ({ proof: ids.nextProof }), answers: only.staff },
  'give-mark': {
    input: ({ ids }) => ({ proofId: ids.nextProof, criterionVersionId: ids.criterionVersion, level: 1, version: -1, why: '' }),
    answers: only.staff,
  },
  // The task of this proof is the assistant's, who alone may open it again.
  'finish-proof': { input: ({ ids }) => ({ proof: ids.proof, to: 'open' }), answers: { ...only.staff, instructor: 'CONFLICT' } },
  'choose-proof': { input: ({ ids }) => ({ proof: ids.nextProof }), answers: only.instructor },
};
