import { secrets } from '../fill-world';
import { only, type Row, type Rows } from '../row';

const nothing = () => ({});
const newcomer = { name: 'New Comer', email: 'new.comer@school.example', password: 'lanterns over water' };

/** A course must keep an instructor, so these two can't be erased. */
const unlessAlone: Row['answers'] = { ...only.signedIn, outsider: 'CONFLICT', instructor: 'CONFLICT' };

export const accountRows: Rows = {
  'sign-in': { input: () => ({ email: 'Student@School.example ', password: secrets.password }), answers: only.anyone },
  'sign-in-through-school': {
    input: () => ({
      issuer: 'https://id.school.example',
      subject: '1',
      email: 'student@school.example',
      emailVerified: true,
      name: null,
    }),
    answers: only.nobody,
  },
  'recognise-session': { input: () => ({ sessionToken: 'whatever' }), answers: only.nobody },
  'sign-out': { input: nothing, answers: only.signedIn },
  'sign-out-everywhere': { input: nothing, answers: only.signedIn },
  'end-session': { input: ({ ids }) => ({ sessionId: ids.sessions.student }), answers: only.owner },
  'get-self': { input: nothing, answers: only.anyone },
  'get-account': { input: nothing, answers: only.signedIn },
  'get-calendar-feed': { input: nothing, answers: only.signedIn },
  'make-calendar-feed': { input: nothing, answers: only.signedIn },
  'revoke-calendar-feed': { input: nothing, answers: only.signedIn },
  // The address is the scope: whoever has it reads the student’s dates.
  'read-calendar-feed': {
    input: () => ({ token: secrets.calendar }),
    answers: only.anyone,
    tells: ({ ids }) => [ids.course, ids.exercise, ids.round, ids.nextRound, 'First lines'],
  },
  'change-name': { input: () => ({ name: 'Another Name' }), answers: only.signedIn },
  'change-password': {
    input: () => ({ currentPassword: secrets.password, newPassword: 'kites above the mole' }),
    answers: only.signedIn,
  },
  'export-own-data': { input: nothing, answers: only.signedIn },
  'erase-account': {
    input: (_world, who) => ({ email: `${who.toLowerCase()}@school.example`, password: secrets.password }),
    answers: unlessAlone,
  },
  'request-password-link': { input: () => ({ email: 'student@school.example' }), answers: only.anyone },
  'export-person-data': { input: () => ({ email: 'student@school.example' }), answers: only.nobody },
  'erase-person': {
    input: () => ({ email: 'student@school.example', yes: 'student@school.example' }),
    answers: only.nobody,
  },
  'send-retention-notices': { input: nothing, answers: only.nobody },
  'send-welcomes': { input: nothing, answers: only.nobody },
  'close-forgotten-walls': { input: nothing, answers: only.nobody },
  'create-password-link-by-address': { input: () => ({ email: 'student@school.example' }), answers: only.nobody },
  // Whoever holds the link is told whose password it sets.
  'get-password-link': {
    input: () => ({ token: secrets.reset }),
    answers: only.anyone,
    tells: () => ['The student', '"student@school.example"'],
  },
  'reset-password': {
    input: () => ({ token: secrets.reset, newPassword: 'kites above the mole' }),
    answers: only.anyone,
  },
  'create-first-link': { input: nothing, answers: only.nobody },
  'get-first-link': { input: () => ({ token: secrets.first }), answers: only.anyone },
  'become-first-instructor': { input: () => ({ token: secrets.first, ...newcomer }), answers: only.anyone },
  'accept-first-link': { input: () => ({ token: secrets.first }), answers: only.signedIn },
};
