import { Pages } from '@/app/_ui/Pages';
import { Table } from '@/app/_ui/Table';
import type { MapValue } from '@/shared/class/map-view';
import { signed } from '@/shared/text/number';

type Props = {
  table: { page: number; pages: number; pairs: string[]; rows: { name: string; values: MapValue[] }[] };
  address: (page: number) => string;
};

/** The map’s numbers, students down and pairs across; an asterisk marks a value outside tolerance. */
export function MapTable({ table: { page, pages, pairs, rows }, address }: Props) {
  return (
    <>
      <Table
        caption={
          <>
            Deviations in 1/1000 em, above 0 wider
            {pages > 1 && (
              <>
                , page {page} of {pages}
              </>
            )}
            . An asterisk: outside tolerance.
          </>
        }
      >
        <thead>
          <tr>
            <th scope="col">Student</th>
            {pairs.map((letters, index) => (
              <th key={index} scope="col" className="number">
                {letters}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, values }, row) => (
            <tr key={row}>
              <th scope="row">{name}</th>
              {values.map((value, index) => (
                <td key={index} className="number">
                  {cell(value)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </Table>
      <Pages label="Pages of students" page={page} pages={pages} href={address} />
    </>
  );
}

function cell(value: MapValue) {
  if (value === null || value.far === null) return '–';
  if (Math.abs(value.far) <= value.tolerance) return signed(value.far, 1);
  return (
    <>
      {signed(value.far, 1)}
      <span aria-hidden="true">*</span>
      <span className="visually-hidden"> outside tolerance</span>
    </>
  );
}
