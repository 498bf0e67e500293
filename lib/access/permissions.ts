import { type Role, roles } from '@/shared/schemas/course';

type Groups = { everyone: boolean; staff: boolean; instructors: boolean; students: boolean };

/** Which of the groups of the table below each role belongs to. */
const groups: Record<Role, Groups> = {
  instructor: { everyone: true, staff: true, instructors: true, students: false },
  assistant: { everyone: true, staff: true, instructors: false, students: false },
  student: { everyone: true, staff: false, instructors: false, students: true },
};
const group = (name: keyof Groups): readonly Role[] => roles.filter((role) => groups[role][name]);
const everyone = group('everyone');
const staff = group('staff');
const instructors = group('instructors');
const students = group('students');

/**
 * Who may do what, in one table. `anyone`: signed in or not. `signed-in`: any person, about themselves. `course-maker`:
 * a person who may open courses. `system`: start, seed and jobs only. A list: members of the course in question with
 * one of these roles; the data layer puts it into each query. The lists come from `groups`, which sorts every role.
 */
export const permissions = {
  open: 'anyone',
  'account:own': 'signed-in',
  'course:make': 'course-maker',
  'course:see': everyone,
  'course:run': instructors,
  'member:see': staff,
  'member:manage': instructors,
  'exercise:see': everyone,
  'exercise:plan': instructors,
  'reference:see': staff,
  'reference:set': staff,
  'draft:keep': everyone,
  'proof:send': students,
  'proof:see': everyone,
  'critique:write': staff,
  'critique:answer': everyone,
  'mark:give': staff,
  'mark:settle': staff,
  'release:see': everyone,
  'release:make': instructors,
  'class:see': staff,
  'wall:run': staff,
  'marks:export': instructors,
  'records:read': instructors,
  system: 'system',
} as const satisfies Record<string, Grant>;

export type Grant = 'anyone' | 'signed-in' | 'course-maker' | 'system' | readonly Role[];
export type Permission = keyof typeof permissions;
