import { operation } from '@/lib/access/operation';
import { roundInHand } from '@/lib/review/context';
import { agreementOfRound } from '@/lib/review/agreement';
import { agreementWords } from '@/shared/marking/agreement';
import { roundByNumber } from '@/shared/schemas/critique';
import { csvOf } from './csv';

/** The agreement of two markers by each criterion as CSV: the figures, then the cross-table, a row for each pair of levels. Names nobody. */
export const exportAgreement = operation({
  name: 'export-agreement',
  allow: 'mark:settle',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const hand = await roundInHand(data, exerciseId, roundNumber);
    const { criteria } = await agreementOfRound(data, hand, now);
    const head = [
      'Criterion',
      'Row',
      'First marker',
      'Second marker',
      'Proofs',
      'Same level in %',
      'Same or adjacent level in %',
      'Quadratic weighted kappa',
      'Reading',
    ];
    const rows = criteria.flatMap(({ criterion: { title, levels }, agreement }) => [
      [
        title,
        'all',
        '',
        '',
        agreement.n,
        percent(agreement.exact),
        percent(agreement.adjacent),
        agreement.kappa === null ? '' : round(agreement.kappa, 4),
        agreementWords(agreement),
      ],
      ...agreement.table.flatMap((row, first) =>
        row.map((count, second) => [
          title,
          'pair of levels',
          levels[first]!.title,
          levels[second]!.title,
          count,
          '',
          '',
          '',
          '',
        ]),
      ),
    ]);
    return { csv: csvOf(head, rows), name: `agreement-round-${hand.round.number}.csv` };
  },
});

const round = (value: number, decimals: number): number => Math.round(value * 10 ** decimals) / 10 ** decimals;
const percent = (share: number | null): number | string => (share === null ? '' : round(share * 100, 2));
