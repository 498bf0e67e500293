import { describe, expect, it } from 'vitest';
import { studentMinutes, workedSeconds } from '@/shared/exercise/student-minutes';

/** Instants in seconds after a whole hour. */
const at = (...seconds: number[]) => seconds.map((second) => 1_800_000_000_000 + second * 1000);

describe('time at work on a line', () => {
  it('is from the first change to the last, with pauses of more than three minutes left out', () => {
    expect(workedSeconds(at(0, 10, 40))).toBe(40);
    expect(workedSeconds(at(0, 10, 191, 200))).toBe(19);
    expect(workedSeconds(at(0, 180))).toBe(180);
    expect(workedSeconds(at(40, 0, 10))).toBe(40);
    expect(workedSeconds([])).toBe(0);
  });
});

describe('a student’s minutes', () => {
  const line = (student: string, seconds: number, gaps = 4) => ({ student, gaps, changes: at(0, seconds) });

  it('are the stated 20 seconds a gap while fewer than three students have worked', () => {
    expect(studentMinutes(45, [])).toEqual({ minutes: 15, seconds: 20, students: null });
    const two = [line('a', 40), line('a', 60), line('b', 160)];
    expect(studentMinutes(45, two)).toEqual({ minutes: 15, seconds: 20, students: null });
  });

  it('are the middle pace of past lines once three have', () => {
    // 10, 15 and 40 seconds a gap: 12 gaps at 15 are three minutes.
    expect(studentMinutes(12, [line('a', 40), line('b', 60), line('c', 160)])).toEqual({
      minutes: 3,
      seconds: 15,
      students: 3,
    });
  });

  it('are at least one, and nobody counts who made one change only', () => {
    expect(studentMinutes(1, []).minutes).toBe(1);
    const one = { student: 'd', gaps: 4, changes: at(0) };
    expect(studentMinutes(12, [line('a', 40), line('b', 60), one]).students).toBeNull();
  });
});
