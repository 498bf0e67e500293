import { operation } from '@/lib/access/operation';
import { classSummary } from '@/lib/class/class-summary';
import { roundInHand } from '@/lib/review/context';
import { roundByNumber } from '@/shared/schemas/critique';
import { csvOf } from './csv';

/** How far the class is from the nearest reference, a row a pair; nobody is named in it. */
export const exportClass = operation({
  name: 'export-class',
  allow: 'class:see',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const { round, course } = await roundInHand(data, exerciseId, roundNumber);
    const {
      summary: { lines },
    } = await classSummary(data, round, course.id, now);
    const head = [
      'Line',
      'Pair number',
      'Pair',
      'Left side',
      'Right side',
      'Compared',
      'Median deviation (1/1000 em)',
      'Lower quartile',
      'Upper quartile',
      'Outside tolerance',
    ];
    const rows = lines.flatMap(({ text, compared, pairs }) =>
      pairs.map(({ letters, sides, spread, outside }, index) => [
        text,
        index + 1,
        letters,
        sides?.[0] ?? '',
        sides?.[1] ?? '',
        compared,
        spread?.median ?? '',
        spread?.lower ?? '',
        spread?.upper ?? '',
        outside,
      ]),
    );
    return { csv: csvOf(head, rows), name: `class-round-${round.number}.csv` };
  },
});
