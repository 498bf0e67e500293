import { BarChart } from '../_ui/charts/BarChart';
import { LineChart } from '../_ui/charts/LineChart';
import { SpreadChart } from '../_ui/charts/SpreadChart';
import { Section } from '../_ui/Page';

const sizes = [12, 16, 24, 48, 96];
const far = (index: number, count: number) =>
  Array.from({ length: count }, (_, turn) => -60 + 15 * index + ((turn * 37) % 53) - 26);

export function ChartParts() {
  return (
    <Section title="Charts">
      <LineChart
        title="Round to round"
        reading="Both lines came nearer to the reference."
        fileName="rounds"
        x={{ label: 'Round', scale: 'round', words: (value) => `Round ${value}` }}
        y={{ label: 'Median deviation', unit: '1/1000 em', include: [0] }}
        series={[
          {
            name: 'HARBOUR',
            points: [
              { x: 1, y: 31, lower: 18, upper: 52 },
              { x: 2, y: 14, lower: 8, upper: 30 },
              { x: 3, y: 9, lower: 3, upper: 17 },
            ],
          },
          {
            name: 'Volta',
            points: [
              { x: 1, y: 22 },
              { x: 2, y: null },
              { x: 3, y: 12 },
            ],
          },
        ]}
        bands={[{ name: 'Tolerance', from: 0, to: 12 }]}
      />
      <LineChart
        title="Size against spacing"
        reading="Bigger was set tighter."
        fileName="sizes"
        x={{ label: 'Size', unit: 'px', scale: 'log2' }}
        y={{ label: 'Tracking', unit: '1/1000 em', plus: true, include: [0] }}
        series={['Roman', 'Bold', 'Slab', 'Narrow', 'Light', 'Wide', 'Text'].map((name, series) => ({
          name,
          points: sizes.map((x, index) => ({ x, y: 20 - index * 10 + series * 6 })),
        }))}
      />
      <LineChart
        title="The term in days"
        reading="One dot a proof."
        fileName="days"
        x={{ label: 'Day', scale: 'time', words: (value) => new Date(value).toISOString().slice(5, 10) }}
        y={{ label: 'Deviation' }}
        series={[
          { name: 'Own', points: [3, 11, 24].map((day, index) => ({ x: Date.UTC(2026, 2, day), y: 30 - index * 8 })) },
        ]}
      />
      <SpreadChart
        title="Totals per pair"
        reading="A few dots a row."
        fileName="totals"
        rowName="Pair"
        x={{ label: 'Total', unit: '1/1000 em', plus: true }}
        rows={['AV', 'Vo', 'ol', 'lt'].map((name, index) => ({
          name,
          values: far(index, 9),
          marks: [{ name: 'Reference 1', value: -60 + 15 * index }],
          band: { from: -75 + 15 * index, to: -45 + 15 * index },
        }))}
      />
      <SpreadChart
        title="Totals of a large class"
        reading="A box a row."
        fileName="large"
        rowName="Pair"
        x={{ label: 'Total', unit: '1/1000 em', plus: true }}
        rows={['AV', 'Vo', 'ol'].map((name, index) => ({
          name,
          values: far(index, 120),
          marks: [{ name: 'Reference 1', value: -60 }],
        }))}
      />
      <BarChart
        title="Kinds of side"
        reading="Open sides are missed most."
        fileName="sides"
        rowName="Sides"
        x={{ label: 'Outside tolerance', unit: '%' }}
        bars={[
          { name: 'round, then slanted away downwards', value: 62.5, more: [120] },
          { name: 'straight, then straight', value: 8, more: [400] },
          { name: 'open, then round', value: null, more: [0] },
        ]}
        moreColumns={[{ name: 'Pairs', digits: 0 }]}
      />
      <BarChart
        title="Moved"
        reading="To either side."
        fileName="moved"
        rowName="Line"
        x={{ label: 'Towards the reference', plus: true }}
        bars={[
          { name: 'HARBOUR', value: 12 },
          { name: 'Volta', value: -5 },
        ]}
      />
    </Section>
  );
}
