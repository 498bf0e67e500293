import { describe, expect, it } from 'vitest';
import { readEnv } from '@/lib/env';

describe('settings', () => {
  it('need none of them to be set', () => {
    expect(readEnv({})).toMatchObject({
      databaseUrl: 'file:./data/kerncrit.db',
      host: '127.0.0.1',
      port: 3000,
      publicOrigin: 'http://127.0.0.1:3000',
      mail: null,
      oidc: null,
      demo: true,
      logLevel: 'error',
      metricsPort: null,
    });
  });

  it('take an empty one for unset', () => {
    expect(readEnv({ PORT: '', SMTP_URL: '' })).toMatchObject({ port: 3000, mail: null });
  });

  it('quote what is wrong, all at once', () => {
    const read = () => readEnv({ PORT: '70000', NEXTAUTH_URL: 'type.school.example', DEMO: 'maybe' });
    expect(read).toThrow(/PORT is "70000"/);
    expect(read).toThrow(/NEXTAUTH_URL is "type\.school\.example"/);
    expect(read).toThrow(/DEMO is "maybe"/);
  });

  it('never quote what may hold a password', () => {
    const read = () => readEnv({ DATABASE_URL: 'mysql://root:hunter22@h/d', NEXTAUTH_SECRET: 'short-secret' });
    expect(read).toThrow(/DATABASE_URL/);
    expect(read).not.toThrow(/hunter22/);
    expect(read).not.toThrow(/short-secret/);
  });

  it('never serve the demo, nor a database nobody named, where others can reach the server', () => {
    for (const open of [{ HOST: '0.0.0.0' }, { HOST: '192.0.2.7' }, { NEXTAUTH_URL: 'https://type.school.example' }]) {
      expect(() => readEnv(open)).toThrow(/DATABASE_URL/);
      const DATABASE_URL = 'file:./school/tpye.db';
      expect(readEnv({ ...open, DATABASE_URL }).demo).toBe(false);
      expect(readEnv({ ...open, DATABASE_URL, DEMO: 'yes' }).demo).toBe(true);
    }
    for (const own of [{ HOST: '127.0.0.1' }, { HOST: '::1' }, { NEXTAUTH_URL: 'http://localhost:3000' }])
      expect(readEnv(own).demo).toBe(true);
  });

  it('ask for those that belong together', () => {
    expect(() => readEnv({ SMTP_URL: 'smtps://mail.school.example' })).toThrow(/MAIL_FROM is missing/);
    expect(() => readEnv({ OIDC_ISSUER: 'https://id.school.example', OIDC_CLIENT_ID: 'x' })).toThrow(
      /OIDC_CLIENT_SECRET is missing/,
    );
  });
});
