import { type Role, roles, roleSchema } from '@/shared/schemas/course';

type Words = { title: string; asOne: string; hint: string };

/** A role's name, alone and in “You join as …”, and what that member does. */
const words: Record<Role, Words> = {
  student: {
    title: 'Student',
    asOne: 'a student',
    hint: 'spaces lines and sends proofs; doesn’t see other students’ work.',
  },
  assistant: {
    title: 'Assistant',
    asOne: 'an assistant',
    hint: 'sees everyone’s proofs, writes notes and gives marks.',
  },
  instructor: {
    title: 'Instructor',
    asOne: 'an instructor',
    hint: 'all of that, and plans exercises, releases marks and manages people.',
  },
};

/** A role in a list. @throws ZodError for an unknown role. */
export const roleWords = (role: string): string => words[roleSchema.parse(role)].title;

/** A role in a sentence. @throws ZodError for an unknown role. */
export const asRole = (role: string): string => words[roleSchema.parse(role)].asOne;

/** Roles to choose from, the one with the fewest rights first. */
export const roleChoices = [...roles]
  .reverse()
  .map((value) => ({ value, label: words[value].title, hint: words[value].hint }));
