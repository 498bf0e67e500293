import { only, type Rows } from '../row';

const round = (ids: { exercise: string }) => ({ exerciseId: ids.exercise, roundNumber: 2 });

export const releaseRows: Rows = {
  'get-release-plan': { input: ({ ids }) => round(ids), answers: only.instructor },
  'preview-release': { input: ({ ids }) => ({ ...round(ids), proof: ids.nextProof }), answers: only.instructor },
  // Nothing goes out unseen: a digest that no page showed is a conflict, for the one who may release at all.
  'release-round': {
    input: ({ ids }) => ({ ...round(ids), to: [{ proofId: ids.nextProof, seen: '0'.repeat(64) }] }),
    answers: { ...only.instructor, instructor: 'CONFLICT' },
  },
  'get-release': { input: ({ ids }) => ({ proofId: ids.proof }), answers: only.ownerAndStaff },
  'answer-note': {
    input: ({ ids }) => ({ noteId: ids.note, afterSeq: 1, body: 'I see it now.' }),
    answers: only.owner,
  },
};
