import { expect, test } from 'vitest';
import { AppError } from '@/lib/access/errors';
import { refuseWeak } from '@/lib/account/password';

const refused = (password: string) => {
  try {
    refuseWeak(password, 'Ines Calloway', 'ines.calloway@quayrow.example');
    return false;
  } catch (error) {
    expect(error).toBeInstanceOf(AppError);
    expect((error as AppError).fields.password).toContain('guessed at once');
    return true;
  }
};

test.each([
  'aaaaaaaaaaaa',
  'abababababab',
  '1234567890',
  '0987654321',
  'abcdefghijkl',
  'qwertyuiop',
  'calloway1',
  'Kerncrit2026',
  'ines.calloway',
  'Password12',
  'basketball',
  'Sunshine2026!',
  'dragondragon',
  '1q2w3e4r5t',
])('refuses %s', (password) => {
  expect(refused(password)).toBe(true);
});

test.each(['tide tables for may', 'Xk4!pv0Qz9', 'ünder grüne bäume', '鉄道の夜に星が降る町で'])(
  'takes %s',
  (password) => {
    expect(refused(password)).toBe(false);
  },
);
