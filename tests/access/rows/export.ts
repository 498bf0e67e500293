import { only, type Rows } from '../row';

export const exportRows: Rows = {
  'export-marks': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1 }), answers: only.instructor },
  'export-class': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1 }), answers: only.staff },
  'export-spacing': { input: ({ ids }) => ({ proofId: ids.proof, specimenId: ids.specimen, as: 'svg', licence: true }), answers: only.ownerAndStaff },
};
