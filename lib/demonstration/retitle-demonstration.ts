import { operation } from '@/lib/access/operation';
import { retitleDemonstrationInput } from '@/shared/schemas/demonstration';
import { changeDemonstration } from './change-demonstration';

/** Gives a demonstration another title. */
export const retitleDemonstration = operation({
  name: 'retitle-demonstration',
  allow: 'reference:set',
  input: retitleDemonstrationInput,
  run: (context, { demonstrationId, version, title }) =>
    changeDemonstration(context, demonstrationId, version, { title }),
});
