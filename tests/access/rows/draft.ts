import { only, type Rows } from '../row';

export const draftRows: Rows = {
  'open-bench': { input: ({ ids }) => ({ exerciseId: ids.exercise, specimenId: ids.specimen }), answers: only.members },
  'get-same-text': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.members },
  'get-draft': { input: ({ ids }) => ({ draftId: ids.draft }), answers: only.owner },
  'save-draft': {
    input: ({ ids }) => ({
      draftId: ids.draft,
      baseVersion: 0,
      clientId: 'bench-1',
      seq: 1,
      spacing: { tracking: 0, offsets: [-5] },
    }),
    answers: only.owner,
  },
};
