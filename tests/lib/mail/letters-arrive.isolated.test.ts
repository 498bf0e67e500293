import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Caller } from '@/lib/access/caller';
import { requestPasswordLink, resetPassword } from '@/lib/account/password-links';
import { newId } from '@/lib/data/ids';
import { describeOnSqlite } from '../../fixtures/databases';

const visitor: Caller = { kind: 'visitor', address: '192.0.2.7' };

describeOnSqlite('letters, through a real mail server on this machine', (suite) => {
  const received: { to: string[]; text: string }[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onData(stream, session, done) {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        received.push({
          to: session.envelope.rcptTo.map(({ address }) => address),
          text: Buffer.concat(chunks).toString('utf8').replace(/=\r\n/g, '').replace(/=3D/g, '='),
        });
        done();
      });
    },
  });

  beforeAll(async () => {
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const { port } = server.server.address() as AddressInfo;
    process.env.SMTP_URL = `smtp://127.0.0.1:${port}`;
    process.env.MAIL_FROM = 'Kerncrit <post@school.example>';
    await suite.db.user.create({
      data: { id: newId(), emailNorm: 'mira@school.example', name: 'Mira', createdAt: new Date() },
    });
  });
  afterAll(() => new Promise<void>((resolve) => server.close(() => resolve())));

  const letters = async (count: number) => {
    // A letter goes out after the answer; on a busy machine that takes its time.
    await expect.poll(() => received.length, { timeout: 60_000 }).toBe(count);
    return received;
  };

  it('carry a link that works once, and tell afterwards that the password was changed', async () => {
    expect(await requestPasswordLink(visitor, { email: 'Mira@school.example' })).toEqual({ sent: true });
    const [letter] = await letters(1);
    expect(letter!.to).toEqual(['mira@school.example']);
    expect(letter!.text).toMatch(/^Auto-Submitted: auto-generated\r?$/m);
    const token = /\/reset\/([\w-]+)/.exec(letter!.text)![1]!;
    await resetPassword(visitor, { token, newPassword: 'eleven lamps along the pier' });
    await expect(resetPassword(visitor, { token, newPassword: 'twelve lamps along the pier' })).rejects.toMatchObject({
      code: 'EXPIRED',
    });
    const [, told] = await letters(2);
    expect(told!.text).toContain('Your Kerncrit password was changed');
  });

  it('go to nobody where there is no account, with the same answer', async () => {
    expect(await requestPasswordLink(visitor, { email: 'nobody@school.example' })).toEqual({ sent: true });
    // Letters leave in the order they were asked for: had there been one, it would be before the next.
    await requestPasswordLink(visitor, { email: 'mira@school.example' });
    const [, , next] = await letters(3);
    expect(next!.to).toEqual(['mira@school.example']);
  });
});
