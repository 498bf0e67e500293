import * as z from 'zod/mini';

/**
 * An e-mail address as people type it, brought into the one form that is stored and compared: trimmed, lower case,
 * NFC. Only what every address has is asked for (one @ with something on both sides, at most 254 characters,
 * RFC 5321 §4.5.3.1.3): the letter that is sent is the real check.
 */
export const emailSchema = z.pipe(
  z.pipe(
    z.string(),
    z.transform((typed: string) => typed.trim().toLowerCase().normalize('NFC')),
  ),
  z
    .string()
    .check(
      z.minLength(1, 'Write your e-mail address.'),
      z.maxLength(254, 'This is longer than an e-mail address can be (254 characters).'),
      z.regex(
        /^$|^[^\s@]+@[^\s@]+$/u,
        'This does not look like an e-mail address: it needs one @ with something before and after it.',
      ),
    ),
);

/** As it should appear on a class list. One line, 1 to 120 characters. */
export const personNameSchema = z.pipe(
  z.pipe(
    z.string(),
    z.transform((typed: string) => typed.normalize('NFC').replace(/\s+/gu, ' ').trim()),
  ),
  z
    .string()
    .check(
      z.minLength(1, 'Write the name as it should appear on the class list.'),
      z.maxLength(120, 'A name can have at most 120 characters.'),
      z.regex(/^[^\p{Cc}\p{Cf}]*$/u, 'A name can’t contain control characters.'),
    ),
);

/**
 * A password that is being chosen: 10 to 200 characters, any of them, no rules of composition
 * (NIST SP 800-63B §3.1.1.2 advises length over composition; NFKC as it says there).
 */
export const newPasswordSchema = z.pipe(
  z.pipe(
    z.string(),
    z.transform((typed: string) => typed.normalize('NFKC')),
  ),
  z
    .string()
    .check(
      z.minLength(10, 'Choose a password of at least 10 characters; a few words in a row are good.'),
      z.maxLength(200, 'A password can have at most 200 characters.'),
    ),
);

/** A password that is being tried: its form is not checked, so that the answer reveals nothing. */
const triedPasswordSchema = z.pipe(
  z.string().check(z.minLength(1, 'Write your password.'), z.maxLength(1000, 'This is longer than a password can be.')),
  z.transform((typed: string) => typed.normalize('NFKC')),
);

/** The secret part of a link: 32 random bytes in base64url, 43 characters. */
export const linkTokenSchema = z
  .string()
  .check(z.regex(/^[A-Za-z0-9_-]{43}$/, 'This link is not complete. Copy the whole of it.'));

export const signInSchema = z.object({ email: emailSchema, password: triedPasswordSchema });
export const newAccountSchema = z.object({ name: personNameSchema, email: emailSchema, password: newPasswordSchema });

/** What a person's account remembers for them. What is not there has not happened yet. */
export const preferencesSchema = z.object({
  /** How the short guided line before the first bench ended. */
  guidedLine: z.optional(z.enum(['done', 'skipped'])),
});
