import { only, type Rows } from '../row';

export const classRows: Rows = {
  'show-class': { input: ({ ids }) => ({ exerciseId: ids.exercise, round: 1 }), answers: only.staff },
  'show-course-class': { input: ({ ids }) => ({ courseId: ids.course }), answers: only.staff },
  'show-map': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, round: 1, line: null, tablePage: 1 }),
    answers: only.staff,
  },
  'read-map': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1, line: null }), answers: only.staff },
  'show-pair-totals': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1, line: ids.specimenVersion }),
    answers: only.staff,
  },
  'show-progress': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.staff },
  'export-map': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1, line: ids.specimenVersion }),
    answers: only.staff,
  },
  'show-term': { input: ({ ids }) => ({ courseId: ids.course, memberId: ids.members.student }), answers: only.staff },
  'show-own-term': { input: ({ ids }) => ({ courseId: ids.course }), answers: only.students },
};
