import { median } from '@/shared/stats/median';

/** Where no past work says it: seconds for one gap. Stated, not measured: three or four tries and a look at the line. */
const STATED_SECONDS = 20;
/** A silence longer than this, in seconds, is a pause. */
const PAUSE = 180;
/** So many students must have worked before their pace is taken. */
const ENOUGH_STUDENTS = 3;

/** One line as one student worked on it: how many gaps it has, and when each change arrived, ms since 1970. */
export type WorkedLine = { student: string; gaps: number; changes: readonly number[] };

/** `students`: whose past work it is from; null: from the stated figure. `seconds`: for one gap. */
export type StudentMinutes = { minutes: number; seconds: number; students: number | null };

/**
 * How many minutes a student will need for `gaps` gaps: by the middle pace of past lines, else by the stated figure.
 * Minutes are whole, at least 1.
 */
export function studentMinutes(gaps: number, past: readonly WorkedLine[]): StudentMinutes {
  const worked = past
    .filter((line) => line.gaps > 0 && line.changes.length > 1)
    .map((line) => ({ student: line.student, pace: workedSeconds(line.changes) / line.gaps }));
  const students = new Set(worked.map(({ student }) => student)).size;
  const known = students >= ENOUGH_STUDENTS;
  const seconds = known ? median(worked.map(({ pace }) => pace)) : STATED_SECONDS;
  return {
    minutes: Math.max(1, Math.floor((gaps * seconds) / 60 + 0.5)),
    seconds,
    students: known ? students : null,
  };
}

/** Seconds from the first change to the last, pauses left out. The look before the first change is not known. */
export function workedSeconds(changes: readonly number[]): number {
  const inOrder = [...changes].sort((one, other) => one - other);
  let sum = 0;
  for (const [index, at] of inOrder.entries()) {
    const since = index === 0 ? 0 : (at - inOrder[index - 1]!) / 1000;
    if (since <= PAUSE) sum += since;
  }
  return sum;
}
