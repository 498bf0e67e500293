import { only, type Rows } from '../row';

export const proofRows: Rows = {
  'stand-at-exercise': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.members },
  'see-work': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.members },
  'send-proof': {
    input: ({ ids }, who) => ({
      exerciseId: ids.exercise,
      requestKey: `request-of-${who}`,
      reasoning: 'The round sides stand closer.',
    }),
    answers: only.students,
  },
  'see-proof': { input: ({ ids }) => ({ proofId: ids.proof }), answers: only.ownerAndStaff },
};
