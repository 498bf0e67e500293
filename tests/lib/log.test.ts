import { Writable } from 'node:stream';
import { expect, it } from 'vitest';
import { logRequest, makeLog } from '@/lib/log';

/** What a log of this level writes, as objects. */
function written(level: string, write: (log: ReturnType<typeof makeLog>) => void): Record<string, unknown>[] {
  const lines: string[] = [];
  const to = new Writable({
    write: (chunk, _encoding, done) => {
      lines.push(String(chunk));
      done();
    },
  });
  write(makeLog(level, to));
  return lines.map((line) => JSON.parse(line) as Record<string, unknown>);
}

it('writes an error as one line of JSON: its kind, message, code and cause, and nothing else that hangs on it', () => {
  const error = Object.assign(new TypeError('No such column', { cause: new Error('the disk is full') }), {
    code: 'P2022',
    values: ['ines@quayrow.example'],
  });
  const [line, ...more] = written('error', (log) => log.error({ error }));
  expect(more).toEqual([]);
  expect(line).toMatchObject({
    level: 'error',
    error: { type: 'TypeError', message: 'No such column', code: 'P2022', cause: { message: 'the disk is full' } },
  });
  expect(Date.parse(String(line!.time))).not.toBeNaN();
  expect(JSON.stringify(line)).not.toContain('ines@');
});

it('takes anything that was thrown', () => {
  expect(written('error', (log) => log.error({ error: 'in words' }))).toMatchObject([
    { error: { type: 'string', message: 'in words' } },
  ]);
});

it('writes requests only where that is asked for, without the codes in their addresses', () => {
  const request = { method: 'GET', path: '/join/9f2c-secret-code?x=1', status: 200, milliseconds: 12.4 };
  expect(written('error', (log) => logRequest(request, log))).toEqual([]);
  const lines = written('info', (log) => logRequest(request, log));
  expect(lines).toMatchObject([{ request: { method: 'GET', path: '/join', status: 200, milliseconds: 12 } }]);
  expect(JSON.stringify(lines)).not.toContain('secret');
});
