import { secrets } from '../fill-world';
import { only, type Row, type Rows } from '../row';
import type { World } from '../world';

const course = ({ ids }: World) => ({ courseId: ids.course });
const student = ({ ids }: World) => ({ courseId: ids.course, memberId: ids.members.student });

/** A removed member is not let in again by a link; an existing member just goes on. */
const byLink: Row['answers'] = { ...only.signedIn, removed: 'CONFLICT' };

const roster = { text: 'name,e-mail\nNew Person,new@school.example', columns: [] };

export const courseRows: Rows = {
  'preview-copy': { input: (world) => ({ ...course(world), dates: 'moved', days: 364 }), answers: only.instructor },
  'copy-course': {
    input: (world) => ({ ...course(world), title: 'Next term', dates: 'empty', days: 0 }),
    answers: only.instructor,
  },
  // The world's course has no last day of retention, so the instructor is refused with that reason.
  'end-retention': {
    input: (world) => ({ ...course(world), title: 'Display type' }),
    answers: { ...only.instructor, instructor: 'CONFLICT' },
  },
  'get-retention': { input: course, answers: only.instructor },
  'get-roster-options': { input: course, answers: only.instructor },
  'preview-roster': { input: (world) => ({ ...course(world), ...roster }), answers: only.instructor },
  'import-roster': {
    input: (world) => ({ ...course(world), ...roster, makeSections: false }),
    answers: only.instructor,
  },
  'list-courses': { input: () => ({}), answers: only.signedIn },
  'list-next-steps': { input: () => ({}), answers: only.signedIn },
  'get-new-course-options': { input: () => ({}), answers: only.instructor },
  'create-course': { input: () => ({ title: 'Second term', timeZone: 'Europe/Lisbon' }), answers: only.instructor },
  'get-course': { input: course, answers: only.members },
  'get-course-settings': { input: course, answers: only.instructor },
  'edit-course': {
    input: (world) => ({
      ...course(world),
      version: 0,
      title: 'Display type, again',
      timeZone: 'Europe/Vienna',
      retainUntil: '2028-09-30',
      figuresHidden: false,
    }),
    answers: only.instructor,
  },
  'list-audit-events': { input: course, answers: only.instructor },
  'list-people': { input: course, answers: only.staff },
  'list-join-links': { input: course, answers: only.instructor },
  'create-join-link': {
    input: (world) => ({ ...course(world), role: 'student', sectionId: world.ids.section, days: 14 }),
    answers: only.instructor,
  },
  'revoke-join-link': {
    input: (world) => ({ ...course(world), joinLinkId: world.ids.joinLink }),
    answers: only.instructor,
  },
  'get-join-link': { input: () => ({ token: secrets.join }), answers: only.anyone },
  // A link that works leads to its course.
  'join-course': {
    input: () => ({ token: secrets.join }),
    answers: byLink,
    tells: ({ ids }) => [ids.course],
  },
  'join-with-new-account': {
    input: () => ({
      token: secrets.join,
      name: 'New Comer',
      email: 'new.comer@school.example',
      password: 'lanterns over water',
    }),
    answers: only.anyone,
    tells: ({ ids }) => [ids.course],
  },
  'get-member': { input: student, answers: only.instructor },
  'change-role': { input: (world) => ({ ...student(world), role: 'assistant' }), answers: only.instructor },
  'change-section': { input: (world) => ({ ...student(world), sectionId: null }), answers: only.instructor },
  'set-accommodations': {
    input: (world) => ({ ...student(world), accommodations: { moreTime: 25, gapsSpoken: true } }),
    answers: only.instructor,
  },
  'remove-member': { input: student, answers: only.instructor },
  'restore-member': {
    input: ({ ids }) => ({ courseId: ids.course, memberId: ids.members.removed }),
    answers: only.instructor,
  },
  'create-member-password-link': { input: student, answers: only.instructor },
  'allow-course-making': {
    input: ({ ids }) => ({ courseId: ids.course, memberId: ids.members.assistant, allowed: false }),
    answers: only.instructor,
  },
  'add-section': { input: (world) => ({ ...course(world), name: 'Tuesday' }), answers: only.instructor },
  'rename-section': {
    input: (world) => ({ ...course(world), sectionId: world.ids.section, name: 'Wednesday' }),
    answers: only.instructor,
  },
  'remove-section': {
    input: (world) => ({ ...course(world), sectionId: world.ids.section }),
    answers: only.instructor,
  },
};
