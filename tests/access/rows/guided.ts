import { only, type Rows } from '../row';

export const guidedRows: Rows = {
  'finish-guided-line': { input: () => ({ how: 'done' }), answers: only.signedIn },
  'open-practice': { input: () => ({}), answers: only.signedIn },
};
