import { type Role, roles, roleSchema } from '@/shared/schemas/course';

type Words = { title: string; asOne: string; hint: string };

/** What a role is called, alone and in “You join as …”, and what somebody with it does. */
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

/** A role in a list. @throws ZodError for what is no role. */
export const roleWords = (role: string): string => words[roleSchema.parse(role)].title;

/** A role in a sentence. @throws ZodError for what is no role. */
export const asRole = (role: string): string => words[roleSchema.parse(role)].asOne;

/** Roles to choose from, the one with fewest rights first. */
export const roleChoices = [...roles]
  .reverse()
  .map((value) => ({ value, label: words[value].title, hint: words[value].hint }));
