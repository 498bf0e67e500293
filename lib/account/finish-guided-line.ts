import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { preferencesSchema } from '@/shared/schemas/account';

/** Remembers that a person has been led through the guided line, or has left it out. */
export const finishGuidedLine = operation({
  name: 'finish-guided-line',
  allow: 'account:own',
  input: z.strictObject({ how: z.enum(['done', 'skipped']) }),
  run: async ({ data }, { how }) => {
    for (let attempt = 0; attempt < 5; attempt += 1) {
      const before = await data.account.preferences();
      if (before === null) throw notFound();
      const after = { ...z.parse(preferencesSchema, JSON.parse(before)), guidedLine: how };
      if (await data.account.changePreferences(before, JSON.stringify(after))) return { guidedLine: how };
    }
    throw new AppError('UNAVAILABLE', 'Your account was being changed elsewhere at the same moment. Please try again.');
  },
});
