import { only, type Rows } from '../row';

export const classRows: Rows = {
  'get-class': { input: ({ ids }) => ({ exerciseId: ids.exercise, round: 1 }), answers: only.staff },
  'get-course-class': { input: ({ ids }) => ({ courseId: ids.course }), answers: only.staff },
  'get-map-page': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, round: 1, line: null, tablePage: 1 }),
    answers: only.staff,
  },
  'get-map': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1, line: null }), answers: only.staff },
  'get-pair-totals': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1, line: ids.specimenVersion }),
    answers: only.staff,
  },
  'get-progress': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.staff },
  'export-map': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1, line: ids.specimenVersion }),
    answers: only.staff,
  },
  'get-term': { input: ({ ids }) => ({ courseId: ids.course, memberId: ids.members.student }), answers: only.staff },
  'get-own-term': { input: ({ ids }) => ({ courseId: ids.course }), answers: only.students },
};
