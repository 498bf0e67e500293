import { csvOf } from '@/shared/text/csv';

type Props = {
  head: readonly string[];
  rows: readonly (readonly (string | number | null)[])[];
  fileName: string;
  of: string;
};

/** A table as a file, in the link itself: no script and no further request. */
export function CsvLink({ head, rows, fileName, of }: Props) {
  return (
    <a
      className="csv-link"
      href={`data:text/csv;charset=utf-8,${encodeURIComponent(csvOf(head, rows))}`}
      download={`${fileName}.csv`}
    >
      CSV<span className="visually-hidden"> of “{of}”</span>
    </a>
  );
}
