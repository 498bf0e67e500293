import { type ReactNode, useId } from 'react';
import { csvOf } from '@/shared/text/csv';
import { numberText, signed } from '@/shared/text/number';
import { quoted } from '@/shared/text/quoted';
import { Disclosure } from '../Disclosure';
import { Table } from '../Table';

/**
 * A column of the numbers behind a chart. `digits`: decimals shown (2 by default); `plus`: with its sign; `words`:
 * formats a value.
 */
export type ChartColumn = {
  name: string;
  unit?: string;
  digits?: number;
  plus?: boolean;
  words?: (value: number) => string;
};
export type ChartCell = string | number | null;
export type ChartNumbers = { columns: readonly ChartColumn[]; rows: readonly (readonly ChartCell[])[] };

/** What every chart gets besides its data. */
export type ChartText = {
  /** Its name: what is drawn. */
  title: string;
  /** What it shows, in a sentence or two that the caller makes from the same data. */
  reading: ReactNode;
  /** The file's name without its extension. */
  fileName: string;
  /** Address of the CSV, if a route offers more than the numbers of the table. */
  csvHref?: string;
  /** Makes the title a heading, for pages whose outline should lead to it. */
  level?: 2 | 3 | 4;
};

/** Figure, caption, the numbers as a table and as CSV. `drawing` receives the ids of its name and description. */
export function ChartFrame({
  title,
  reading,
  fileName,
  csvHref,
  level,
  numbers,
  drawing,
  chartKey,
}: ChartText & {
  numbers: ChartNumbers;
  chartKey?: ReactNode;
  drawing: (ids: { name: string; description: string }) => ReactNode;
}) {
  const id = useId();
  const Title = level ? (`h${level}` as const) : 'strong';
  const ids = { name: `${id}-name`, description: `${id}-reading` };
  return (
    <figure className="chart">
      <figcaption>
        <Title id={ids.name} className="chart-title">
          {title}
        </Title>
        <span id={ids.description} className="chart-reading">
          {reading}
        </span>
      </figcaption>
      {chartKey}
      {drawing(ids)}
      <div className="chart-numbers">
        <Disclosure
          summary={
            <>
              The numbers<span className="visually-hidden"> of {quoted(title)}</span>
            </>
          }
        >
          <NumbersTable title={title} numbers={numbers} />
        </Disclosure>
        {csvHref ? (
          <a className="csv-link" href={csvHref} download={`${fileName}.csv`}>
            CSV<span className="visually-hidden"> of {quoted(title)}</span>
          </a>
        ) : (
          <CsvLink
            head={numbers.columns.map(columnTitle)}
            rows={numbers.rows.map((row) => row.map(exact))}
            fileName={fileName}
            of={title}
          />
        )}
      </div>
    </figure>
  );
}

function NumbersTable({ title, numbers: { columns, rows } }: { title: string; numbers: ChartNumbers }) {
  const isNumber = columns.map((_, index) => rows.some((row) => typeof row[index] === 'number'));
  const className = (index: number) => (isNumber[index] ? 'number' : undefined);
  return (
    <Table caption={title} captionHidden narrow>
      <thead>
        <tr>
          {columns.map((column, index) => (
            <th key={column.name} scope="col" className={className(index)}>
              {columnTitle(column)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, rowIndex) => (
          <tr key={rowIndex}>
            {row.map((cell, index) =>
              index === 0 ? (
                <th key={index} scope="row">
                  {cellText(cell, columns[index]!)}
                </th>
              ) : (
                <td key={index} className={className(index)}>
                  {cellText(cell, columns[index]!)}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </Table>
  );
}

const columnTitle = ({ name, unit }: ChartColumn): string => (unit ? `${name} (${unit})` : name);
const exact = (cell: ChartCell): ChartCell => (typeof cell === 'number' ? Math.round(cell * 10_000) / 10_000 : cell);

function cellText(cell: ChartCell, { digits = 2, plus, words }: ChartColumn): string {
  if (cell === null) return '–';
  if (typeof cell === 'string') return cell;
  if (words) return words(cell);
  return plus ? signed(cell, digits) : numberText(cell, digits);
}

type Props = {
  head: readonly string[];
  rows: readonly (readonly (string | number | null)[])[];
  fileName: string;
  of: string;
};

/** A table as a file inside the link itself: no script and no further request. */
export function CsvLink({ head, rows, fileName, of }: Props) {
  return (
    <a
      className="csv-link"
      href={`data:text/csv;charset=utf-8,${encodeURIComponent(csvOf(head, rows))}`}
      download={`${fileName}.csv`}
    >
      CSV<span className="visually-hidden"> of {quoted(of)}</span>
    </a>
  );
}
