import type { Role } from '@/lib/data/actor';

/**
 * Who may do what, in one table.
 * `anyone`: signed in or not. `signed-in`: any person, about themselves.
 * `course-maker`: a person who may open courses. `system`: start, seed and jobs only.
 * A list: members of the course in question with one of these roles; the data layer puts it into each query.
 */
export const permissions = {
  open: 'anyone',
  'account:own': 'signed-in',
  'course:make': 'course-maker',
  'course:see': ['instructor', 'assistant', 'student'],
  'course:run': ['instructor'],
  'member:see': ['instructor', 'assistant'],
  'member:manage': ['instructor'],
  'exercise:see': ['instructor', 'assistant', 'student'],
  'exercise:plan': ['instructor'],
  'reference:see': ['instructor', 'assistant'],
  'reference:set': ['instructor', 'assistant'],
  'draft:keep': ['instructor', 'assistant', 'student'],
  'proof:send': ['student'],
  'proof:see': ['instructor', 'assistant', 'student'],
  'critique:write': ['instructor', 'assistant'],
  'critique:answer': ['instructor', 'assistant', 'student'],
  'mark:give': ['instructor', 'assistant'],
  'mark:settle': ['instructor', 'assistant'],
  'release:see': ['instructor', 'assistant', 'student'],
  'release:make': ['instructor'],
  'class:see': ['instructor', 'assistant'],
  'wall:run': ['instructor', 'assistant'],
  'marks:export': ['instructor'],
  'records:read': ['instructor'],
  system: 'system',
} as const satisfies Record<string, Grant>;

export type Grant = 'anyone' | 'signed-in' | 'course-maker' | 'system' | readonly Role[];
export type Permission = keyof typeof permissions;
