import { Algorithm, hash, verify } from '@node-rs/argon2';
import { dictionary } from '@zxcvbn-ts/language-common';
import { AppError } from '@/lib/access/errors';

/**
 * Passwords are stored as argon2id with 19 MiB, two passes and one lane (OWASP Password Storage Cheat Sheet; PHC string
 * format, so that stronger parameters can be told from older ones later).
 */
const settings = {
  algorithm: 2 satisfies Algorithm.Argon2id as Algorithm,
  memoryCost: 19456,
  timeCost: 2,
  parallelism: 1,
};

// Two at once, so that a burst of sign-ins can't take the memory and both processors from everyone else.
const oneOfTwo = limitConcurrency({ running: 2, waiting: 60 });

/** The string to store. @throws AppError UNAVAILABLE when sixty others are waiting already. */
export function hashPassword(password: string): Promise<string> {
  return oneOfTwo(() => hash(password, settings));
}

/**
 * Whether the password matches. Takes equally long for an account that does not exist or has no password: both cases
 * compare a hash, so that timing doesn't reveal who has an account.
 */
export async function passwordFits(stored: string | null | undefined, password: string): Promise<boolean> {
  return oneOfTwo(async () => {
    const fits = await verify(stored ?? (await placeholder()), password);
    return fits && stored != null;
  });
}

let made: Promise<string> | undefined;

/** The hash of a password that no account has, made once. */
function placeholder(): Promise<string> {
  made ??= hash(crypto.randomUUID(), settings);
  return made;
}

/**
 * Refuses what is guessed first: the person's own name or address, this product's name, one character over and over,
 * a plain run along the keyboard's digits or the alphabet, or one of the passwords that most people have.
 * @throws AppError INVALID on `field`.
 */
export function refuseWeak(password: string, name: string, email: string, field = 'password'): void {
  const plain = password.toLowerCase();
  const own = [email, email.split('@')[0] ?? '', ...name.toLowerCase().split(/\s+/u)].filter(
    (word) => word.length >= 4,
  );
  const leftOver = [...own, 'kerncrit', 'password'].reduce((rest, word) => rest.replaceAll(word, ''), plain);
  if (new Set(plain).size >= 5 && [...leftOver].length >= 6 && !isRun(plain) && !isCommon(plain)) return;
  const message =
    'This password would be guessed at once: it is little more than a name, an address, a run of signs or one that many people have. Choose a few words that have nothing to do with you.';
  throw new AppError('INVALID', message, { fields: { [field]: message } });
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

let common: ReadonlySet<string> | undefined;

/**
 * Whether it is one of about fifty thousand common passwords (the list of @zxcvbn-ts/language-common), as it is,
 * repeated, or with digits and signs around it. Short ones are on the list because of what people add to them.
 */
function isCommon(plain: string): boolean {
  common ??= new Set(dictionary['passwords-common']);
  const bare = plain.replace(/^[^\p{L}]+|[^\p{L}]+$/gu, '');
  const half = plain.slice(0, plain.length / 2);
  const forms = [plain, bare.length >= 5 ? bare : plain, half + half === plain ? half : plain];
  return forms.some((form) => common!.has(form));
}

/**
 * Runs tasks in the order they arrive, at most `running` at once.
 * @throws AppError UNAVAILABLE when `waiting` tasks are already in line.
 */
export function limitConcurrency({ running, waiting }: { running: number; waiting: number }) {
  let active = 0;
  const line: (() => void)[] = [];

  return async function runLimited<T>(task: () => Promise<T>): Promise<T> {
    if (active >= running) {
      if (line.length >= waiting) throw tooBusy();
      await new Promise<void>((start) => line.push(start));
    } else {
      active += 1;
    }
    try {
      return await task();
    } finally {
      // The slot is passed on, not released, so that a new task can't overtake those that wait.
      const next = line.shift();
      if (next) next();
      else active -= 1;
    }
  };
}

const tooBusy = () =>
  new AppError('UNAVAILABLE', 'Very many people are signing in at this moment. Please try again in a few seconds.', {
    retryAfterSeconds: 5,
  });
