import { only, type Rows } from '../row';

export const proofRows: Rows = {
  'get-exercise-role': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.members },
  'get-work': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.members },
  'send-proof': {
    input: ({ ids }, who) => ({
      exerciseId: ids.exercise,
      requestKey: `request-of-${who}`,
      reasoning: 'The round sides stand closer.',
    }),
    answers: only.students,
  },
  'get-proof': { input: ({ ids }) => ({ proofId: ids.proof }), answers: only.ownerAndStaff },
};
