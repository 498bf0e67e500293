import { AppError } from '@/lib/access/errors';

/**
 * Refuses what is guessed first: the person's own name or address, this product's name, one character over and over,
 * or a plain run along the keyboard's digits or the alphabet.
 * @throws AppError INVALID on `field`.
 */
export function refuseWeak(password: string, name: string, email: string, field = 'password'): void {
  const plain = password.toLowerCase();
  const own = [email, email.split('@')[0] ?? '', ...name.toLowerCase().split(/\s+/u)].filter(
    (word) => word.length >= 4,
  );
  const leftOver = [...own, 'kerncrit', 'password'].reduce((rest, word) => rest.replaceAll(word, ''), plain);
  if (new Set(plain).size >= 5 && [...leftOver].length >= 6 && !isRun(plain)) return;
  const said =
    'This password would be guessed at once: it is little more than a name, an address or a run of signs. Choose a few words that have nothing to do with you.';
  throw new AppError('INVALID', said, { fields: { [field]: said } });
}

const rows = [
  'abcdefghijklmnopqrstuvwxyz',
  '01234567890',
  '09876543210',
  'qwertyuiopasdfghjklzxcvbnm',
  'qwertzuiopasdfghjklyxcvbnm',
];

/** The whole of it is one run, or one run repeated. */
function isRun(plain: string): boolean {
  return rows.some((row) => (row + row + row).includes(plain));
}
