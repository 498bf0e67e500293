import { only, type Rows } from '../row';

const step = { tracking: 0, moves: [[0, -12]], run: [0, 0], reason: 'Both are straight here.' };

/** The demonstration of the world is the assistant's and not shown: for students it is not there. */
export const demonstrationRows: Rows = {
  'save-demonstration': {
    input: ({ ids }) => ({
      demonstrationId: '0190-made-in-the-browser',
      specimenVersionId: ids.specimenVersion,
      title: 'From stem to bowl',
      recorded: { start: { tracking: 0, offsets: [0] }, steps: [step] },
    }),
    answers: only.staff,
  },
  'list-demonstrations': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.members },
  'get-demonstration': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, demonstrationId: ids.demonstration }),
    answers: only.staff,
  },
  'set-demonstration-shown': {
    input: ({ ids }) => ({ demonstrationId: ids.demonstration, version: 0, shown: true }),
    answers: only.staff,
  },
  'remove-demonstration': {
    input: ({ ids }) => ({ demonstrationId: ids.demonstration, version: 0, removed: true }),
    answers: only.staff,
  },
  'rename-demonstration': {
    input: ({ ids }) => ({ demonstrationId: ids.demonstration, version: 0, title: 'Another title' }),
    answers: only.staff,
  },
};
