import * as z from 'zod/mini';

/** The number of the page wanted, from 1; the first by default. */
export const pageNumberSchema = z._default(
  z.coerce.number('Pages have numbers.').check(z.int(), z.gte(1, 'Pages are counted from 1.'), z.lte(100_000)),
  1,
);

/**
 * The page that is shown, of how many, and its rows as a slice [from, to). A page after the last is the last: lists
 * grow shorter.
 */
export function pageOf(
  asked: number,
  rows: number,
  perPage: number,
): { page: number; pages: number; from: number; to: number } {
  const pages = Math.max(1, Math.ceil(rows / perPage));
  const page = Math.min(asked, pages);
  return { page, pages, from: (page - 1) * perPage, to: page * perPage };
}

/** The text to search for in a list of names; empty finds all. */
export const findSchema = z._default(
  z.string().check(z.trim(), z.maxLength(200, 'Look for at most 200 characters.')),
  '',
);
