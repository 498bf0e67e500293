import { only, type Rows } from '../row';

export const classRows: Rows = {
  'show-class': { input: ({ ids }) => ({ exerciseId: ids.exercise, round: 1 }), answers: only.staff },
  'show-course-class': { input: ({ ids }) => ({ courseId: ids.course }), answers: only.staff },
};
