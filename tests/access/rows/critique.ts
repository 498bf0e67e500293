import { only, type Rows } from '../row';

const round = (ids: { exercise: string }) => ({ exerciseId: ids.exercise, roundNumber: 2 });

export const critiqueRows: Rows = {
  'get-queue': { input: ({ ids }) => round(ids), answers: only.staff },
  'begin-marking': { input: ({ ids }) => ({ ...round(ids), version: 0 }), answers: only.staff },
  'get-proof-line': { input: ({ ids }) => ({ proof: ids.nextProof, specimenId: ids.specimen }), answers: only.staff },
  'get-specimen-across': {
    input: ({ ids }) => ({ ...round(ids), specimenId: ids.specimen, fault: null, page: 1 }),
    answers: only.staff,
  },
  'write-note': {
    input: ({ ids }, who) => ({
      proofId: ids.nextProof,
      specimenVersionId: ids.specimenVersion,
      requestKey: `note-by-${who}`,
      fromPair: 0,
      toPair: 0,
      body: 'Close this one.',
      suggestion: [-12],
    }),
    answers: only.staff,
  },
  'edit-note': {
    input: ({ ids }) => ({ noteId: ids.nextNote, version: 0, body: 'Open it a little.', suggestion: null }),
    answers: only.staff,
  },
  'set-note-state': { input: ({ ids }) => ({ noteId: ids.nextNote, version: 0, to: 'settled' }), answers: only.staff },
  'answer-in-thread': {
    input: ({ ids }) => ({ noteId: ids.note, afterSeq: 1, body: 'Look again, upside down.' }),
    answers: only.staff,
  },
  'save-stock-note': {
    input: ({ ids }) => ({ courseId: ids.course, body: 'Squint at it.', fault: '', shared: false }),
    answers: only.staff,
  },
  // A stock note is its author's: the assistant's in this world.
  'delete-stock-note': {
    input: ({ ids }) => ({ stockNoteId: ids.stockNote }),
    answers: { ...only.staff, instructor: 'NOT_FOUND' },
  },
};
