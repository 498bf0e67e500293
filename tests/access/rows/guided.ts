import { only, type Rows } from '../row';

export const guidedRows: Rows = {
  'finish-guided-line': { input: () => ({ how: 'done' }), answers: only.signedIn },
  'save-practice-results': {
    input: () => ({
      results: [
        {
          requestKey: 'sitting-1',
          at: '2027-03-08T09:00:00.000Z',
          task: 'gap off',
          kind: 'any',
          size: 48,
          fault: 21,
          trials: 40,
          turns: [20, 22],
        },
      ],
    }),
    answers: only.signedIn,
  },
  'get-practice': { input: () => ({}), answers: only.signedIn },
};
