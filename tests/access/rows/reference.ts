import { only, type Rows } from '../row';

/** A reference is changed by its author alone: an assistant beside the author meets nothing of theirs. */
const authorOnly = { ...only.instructor, assistant: 'NOT_FOUND' } as const;

export const referenceRows: Rows = {
  'list-references': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.staff },
  'get-reference-bench': { input: ({ ids }) => ({ specimenId: ids.specimen, slot: 1 }), answers: only.staff },
  'save-reference': {
    input: ({ ids }) => ({
      specimenVersionId: ids.specimenVersion,
      slot: 2,
      draftId: 'take',
      clientId: 'bench-1',
      seq: 1,
      baseVersion: 0,
      spacing: { tracking: 0, offsets: [-12] },
    }),
    answers: only.staff,
  },
  'carry-reference': {
    input: ({ ids }) => ({ referenceId: ids.reference, specimenIds: [ids.specimen], replace: true }),
    answers: only.staff,
  },
  'accept-reference': { input: ({ ids }) => ({ referenceId: ids.reference }), answers: authorOnly },
  'remove-reference': { input: ({ ids }) => ({ referenceId: ids.reference }), answers: authorOnly },
  'apply-references': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.staff },
};
