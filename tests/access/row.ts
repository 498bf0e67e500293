import type { ErrorCode } from '@/lib/access/errors';
import { type Role, roles } from '@/shared/schemas/course';
import type { World } from './world';

/**
 * Everyone who may knock: `student` owns the work in the world, `otherStudent` sits beside them, `outsider` teaches
 * another course.
 */
export const everyone = [
  'visitor',
  'outsider',
  'removed',
  'student',
  'otherStudent',
  'assistant',
  'instructor',
] as const;
export type Who = (typeof everyone)[number];
/** Does not compile while a role has no column of its own in the table. */
roles satisfies readonly (Role & Who)[];

export type Answer = 'ok' | ErrorCode;

/**
 * One operation: what is asked of it, and what each role gets. `input` is valid and concerns the student's work or the
 * world's course.
 */
export type Row = {
  readonly input: (world: World, who: Who) => unknown;
  readonly answers: Readonly<Record<Who, Answer>>;
  /** Of what is otherwise not for them, what this answer does tell: with the reason beside it. */
  readonly tells?: (world: World, who: Who) => readonly string[];
};

export type Rows = Readonly<Record<string, Row>>;

const shut = { visitor: 'SIGNED_OUT', outsider: 'NOT_FOUND', removed: 'NOT_FOUND' } as const;

/** The usual patterns; anything else is written out. */
export const only = {
  instructor: { ...shut, student: 'NOT_FOUND', otherStudent: 'NOT_FOUND', assistant: 'NOT_FOUND', instructor: 'ok' },
  staff: { ...shut, student: 'NOT_FOUND', otherStudent: 'NOT_FOUND', assistant: 'ok', instructor: 'ok' },
  owner: { ...shut, student: 'ok', otherStudent: 'NOT_FOUND', assistant: 'NOT_FOUND', instructor: 'NOT_FOUND' },
  ownerAndStaff: { ...shut, student: 'ok', otherStudent: 'NOT_FOUND', assistant: 'ok', instructor: 'ok' },
  members: { ...shut, student: 'ok', otherStudent: 'ok', assistant: 'ok', instructor: 'ok' },
  students: { ...shut, student: 'ok', otherStudent: 'ok', assistant: 'NOT_FOUND', instructor: 'NOT_FOUND' },
  signedIn: {
    visitor: 'SIGNED_OUT',
    outsider: 'ok',
    removed: 'ok',
    student: 'ok',
    otherStudent: 'ok',
    assistant: 'ok',
    instructor: 'ok',
  },
  anyone: {
    visitor: 'ok',
    outsider: 'ok',
    removed: 'ok',
    student: 'ok',
    otherStudent: 'ok',
    assistant: 'ok',
    instructor: 'ok',
  },
  nobody: {
    visitor: 'NOT_FOUND',
    outsider: 'NOT_FOUND',
    removed: 'NOT_FOUND',
    student: 'NOT_FOUND',
    otherStudent: 'NOT_FOUND',
    assistant: 'NOT_FOUND',
    instructor: 'NOT_FOUND',
  },
} satisfies Record<string, Row['answers']>;
