import { only, type Rows } from '../row';

export const exportRows: Rows = {
  'export-agreement': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 2 }), answers: only.staff },
  'export-oneroster': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1 }), answers: only.instructor },
  'export-marks': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1 }), answers: only.instructor },
  'export-class': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1 }), answers: only.staff },
  'export-sheet': { input: ({ ids }) => ({ proofId: ids.proof, licence: true }), answers: only.ownerAndStaff },
  'export-sheet-preview': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 2, proof: ids.nextProof, licence: true }),
    answers: only.instructor,
  },
  'export-class-set': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1, licence: true }),
    answers: only.staff,
  },
  'export-round-notes': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1 }), answers: only.staff },
  'export-released-notes': { input: ({ ids }) => ({ proofId: ids.proof }), answers: only.ownerAndStaff },
  'export-spacing': {
    input: ({ ids }) => ({ proofId: ids.proof, specimenId: ids.specimen, as: 'svg', licence: true }),
    answers: only.ownerAndStaff,
  },
};
