import type { Filled } from '../class/fill';

/** One request of an attack; `*` in path and body is replaced by another number each time, `#` by one of 22 figures. */
export type AttackAsk = { method: string; path: string; cookie?: string; body?: string };
export type Attack = { name: string; asks: AttackAsk[] };

/** The dearest that each of the three may ask for, in turn, without end. */
export function attacks(others: Filled, own: Filled, { code, line }: { code: string; line: string }): Attack[] {
  const student = others.students[0]!;
  const results = Array.from({ length: 100 }, (_, place) => ({
    requestKey: `hostile-*-${place}`,
    at: '2026-03-01T09:00:00.000Z',
    task: 'which gap',
    kind: 'round',
    size: 48,
    fault: 21,
    trials: 41,
    turns: Array.from({ length: 100 }, () => 20.5),
    unmoved: null,
  }));
  const tap = JSON.stringify({ phone: '#', at: { line, pair: 1 } });
  const mine = (path: string): AttackAsk => ({ method: 'GET', path, cookie: own.instructorCookie });
  return [
    {
      name: 'student',
      asks: [
        { method: 'POST', path: '/api/practice-results', cookie: student.cookie, body: JSON.stringify({ results }) },
        {
          method: 'PUT',
          path: `/api/drafts/${student.draftIds[0]}`,
          cookie: student.cookie,
          body: JSON.stringify({
            baseVersion: 999_999,
            clientId: 'hostile',
            seq: 1,
            spacing: { tracking: 0, offsets: Array(others.pairs).fill(1) },
          }),
        },
        { method: 'GET', path: `/exercises/${others.exerciseId}`, cookie: student.cookie },
      ],
    },
    {
      name: 'stranger',
      asks: [
        { method: 'PUT', path: `/api/w/${code}`, body: tap },
        { method: 'GET', path: `/api/w/${code}` },
        { method: 'GET', path: `/w/${code}` },
        { method: 'GET', path: `/w/guess-*` },
      ],
    },
    {
      name: 'instructor',
      asks: [
        mine(`/exercises/${own.exerciseId}/rounds/3/release`),
        mine(`/exercises/${own.exerciseId}/map`),
        mine(`/exercises/${own.exerciseId}/progress`),
        mine(`/api/exports/class/${own.exerciseId}?round=3`),
        mine(`/exercises/${own.exerciseId}/class`),
      ],
    },
  ];
}
