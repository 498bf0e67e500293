import { SpreadChart } from '@/app/_ui/charts/SpreadChart';
import type { PairTotals } from '@/shared/class/pair-totals';
import { numberText } from '@/shared/text/number';

/** What the class set at each pair of a line, beside the references: where the band is empty, the class sees it otherwise. */
export function LineTotals({
  totals: { text, count, pairs },
}: {
  totals: { text: string; count: number; pairs: PairTotals[] };
}) {
  const beside = pairs.filter(
    ({ spread, band }) => spread !== null && band !== null && (spread.median < band.from || spread.median > band.to),
  );
  const compared = pairs.some(({ band }) => band !== null);
  return (
    <SpreadChart
      level={3}
      title={`Totals of “${text}”, pair by pair`}
      fileName="totals"
      rowName="Pair"
      reading={
        <>
          Built-in, tracking and offset together, {numberText(count)} settings.{' '}
          {compared ? (
            beside.length === 0 ? (
              'The middle of the class lies where a reference allows it at every pair.'
            ) : (
              <>
                The middle of the class lies outside of what any reference allows at{' '}
                {beside.map(({ letters }) => letters).join(', ')}.
              </>
            )
          ) : (
            'There is no reference to hold them against.'
          )}{' '}
          Tightness of the whole line is part of a total; the table below takes it out.
        </>
      }
      x={{ label: 'Total', unit: '1/1000 em', plus: true }}
      valuesName="Settings of the class"
      marksName="Reference"
      bandName="Allowed by a reference"
      rows={pairs.map(({ letters, values, spread, references, band }) => ({
        name: letters,
        values: values.length > 0 ? values : undefined,
        spread: spread ?? undefined,
        marks: references,
        band: band ?? undefined,
      }))}
    />
  );
}
