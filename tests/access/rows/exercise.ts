import { only, type Rows } from '../row';

const typed = {
  title: 'Another look',
  opensLocal: '',
  dueLocal: '2027-04-01T18:00',
  accept: 'always',
  untilLocal: '',
  deductPerDay: 0,
};
const criterion = {
  title: 'Fit',
  description: '',
  basis: 'judgement',
  weight: 1,
  levels: [
    { title: 'Not yet', description: '', points: 0 },
    { title: 'Fully', description: '', points: 100 },
  ],
};
const change = { text: 'HOH', face: 'lato-700', size: { value: 96, unit: 'px' }, ground: 'light', remark: '' };

/**
 * `closed`, `removed` and the like need another state than the world's published exercise: staff get that reason,
 * everyone else learns nothing.
 */
const toldToStaff = { ...only.instructor, instructor: 'CONFLICT' } as const;

export const exerciseRows: Rows = {
  'create-exercise': {
    input: ({ ids }) => ({ courseId: ids.course, title: 'New', brief: '', safetySigns: false }),
    answers: only.instructor,
  },
  // A list says nothing of a course that is not one's own: it is empty.
  'list-exercises': { input: ({ ids }) => ({ courseId: ids.course }), answers: only.members },
  'list-criteria': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.members },
  'list-removed-exercises': { input: ({ ids }) => ({ courseId: ids.course }), answers: only.instructor },
  'get-plan': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.instructor },
  'get-overview': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.staff },
  'list-faces-for-exercise': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.instructor },
  'find-words': {
    input: ({ ids }) => ({
      exerciseId: ids.exercise,
      face: 'lato-400',
      size: { value: 72, unit: 'px' },
      language: 'en',
      examples: ['AV'],
      alike: false,
      kinds: [],
      lettering: null,
      shortest: 3,
      longest: 12,
      names: 'with',
      words: 1,
      order: 'pairs',
    }),
    answers: only.instructor,
  },
  'change-exercise': {
    input: ({ ids }) => ({
      exerciseId: ids.exercise,
      version: 0,
      title: 'Changed',
      brief: '',
      settings: {
        benchTells: 'contact',
        benchTellsAfterProof: 'evenness',
        referencesShown: 'never',
        tolerance: 12,
        namesHidden: false,
        safetySigns: false,
      },
    }),
    answers: only.instructor,
  },
  'publish-exercise': { input: ({ ids }) => ({ exerciseId: ids.exercise, version: 0 }), answers: toldToStaff },
  'close-exercise': { input: ({ ids }) => ({ exerciseId: ids.exercise, version: 0 }), answers: only.instructor },
  'reopen-exercise': { input: ({ ids }) => ({ exerciseId: ids.exercise, version: 0 }), answers: toldToStaff },
  'remove-exercise': { input: ({ ids }) => ({ exerciseId: ids.exercise, version: 0 }), answers: toldToStaff },
  'restore-exercise': { input: ({ ids }) => ({ exerciseId: ids.exercise, version: 0 }), answers: only.instructor },
  'add-round': { input: ({ ids }) => ({ exerciseId: ids.exercise, ...typed }), answers: only.instructor },
  'get-round': { input: ({ ids }) => ({ roundId: ids.nextRound }), answers: only.instructor },
  'change-round': { input: ({ ids }) => ({ roundId: ids.nextRound, version: 0, ...typed }), answers: only.instructor },
  'remove-round': { input: ({ ids }) => ({ roundId: ids.nextRound, version: 0 }), answers: toldToStaff },
  'extend-round': {
    input: ({ ids }) => ({ roundId: ids.nextRound, memberId: ids.members.student, dueLocal: '2027-04-01T18:00' }),
    answers: only.instructor,
  },
  'set-section-dates': {
    input: ({ ids }) => ({
      roundId: ids.nextRound,
      sectionId: ids.section,
      version: -1,
      opensLocal: '',
      dueLocal: '2027-04-01T18:00',
    }),
    answers: only.instructor,
  },
  'end-extension': { input: ({ ids }) => ({ extensionId: ids.extension }), answers: only.instructor },
  'add-criterion': { input: ({ ids }) => ({ exerciseId: ids.exercise, ...criterion }), answers: only.instructor },
  'change-criterion': {
    input: ({ ids }) => ({ criterionId: ids.criterion, number: 1, ...criterion }),
    answers: only.instructor,
  },
  'retire-criterion': { input: ({ ids }) => ({ criterionId: ids.criterion }), answers: only.instructor },
  'restore-criterion': { input: ({ ids }) => ({ criterionId: ids.criterion }), answers: only.instructor },
  'add-specimens': {
    input: ({ ids }) => ({
      exerciseId: ids.exercise,
      lines: ['TO'],
      faces: ['lato-700'],
      sizes: [{ value: 72, unit: 'px' }],
      grounds: ['light'],
    }),
    answers: only.instructor,
  },
  'preview-specimen-change': {
    input: ({ ids }) => ({ specimenId: ids.specimen, ...change }),
    answers: only.instructor,
  },
  'change-specimen': {
    input: ({ ids }) => ({ specimenId: ids.specimen, number: 1, ...change }),
    answers: only.instructor,
  },
  'get-student-minutes': { input: ({ ids }) => ({ exerciseId: ids.exercise }), answers: only.instructor },
  'set-line-start': {
    input: ({ ids }) => ({ specimenId: ids.specimen, number: 1, start: { kind: 'tight', by: 20 } }),
    answers: only.instructor,
  },
  'move-specimen': { input: ({ ids }) => ({ specimenId: ids.specimen, to: 'later' }), answers: only.instructor },
  'retire-specimen': { input: ({ ids }) => ({ specimenId: ids.specimen }), answers: only.instructor },
  'restore-specimen': { input: ({ ids }) => ({ specimenId: ids.specimen }), answers: only.instructor },
};
