import Link from 'next/link';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Table } from '@/app/_ui/Table';
import { When } from '@/app/_ui/Status';
import type { getReleasePlan } from '@/lib/release/plan';
import { counted, withUnit } from '@/shared/text/number';
import { releaseAction } from '../actions';

type Plan = Awaited<ReturnType<typeof getReleasePlan>>;
type Props = { plan: Plan; more: string; exerciseId: string; roundNumber: number };

/** The students of the plan, each with what would be released; those without a release are ticked at first. */
export function PlanForm({ plan, more, exerciseId, roundNumber }: Props) {
  return (
    <Form action={releaseAction} label="Release">
      <input type="hidden" name="exerciseId" value={exerciseId} />
      <input type="hidden" name="roundNumber" value={roundNumber} />
      <Table caption="Choose who gets the release. What is sent is what this page shows: if anything changes meanwhile, nothing is released and you’ll see why.">
        <thead>
          <tr>
            <th scope="col">Release to</th>
            <th scope="col">Section</th>
            <th scope="col" className="number">
              Notes
            </th>
            <th scope="col">Marks</th>
            <th scope="col" className="number">
              Total
            </th>
            <th scope="col">Released before</th>
            <th scope="col">Look</th>
          </tr>
        </thead>
        <tbody>
          {plan.rows.map((row) => (
            <Row key={row.token} row={row} plan={plan} more={more} />
          ))}
        </tbody>
      </Table>
      <div className="actions">
        <SubmitButton pending="Releasing…">Release to those chosen</SubmitButton>
      </div>
    </Form>
  );
}

function Row({ row, plan, more }: { row: Plan['rows'][number]; plan: Plan; more: string }) {
  const id = `to-${row.token}`;
  return (
    <tr>
      <th scope="row">
        <input
          type="checkbox"
          id={id}
          name="to"
          value={`${row.token} ${row.seen}`}
          defaultChecked={row.released === null && row.unmarked === 0 && row.differing === 0 && !row.secondWaits}
        />{' '}
        <label htmlFor={id}>{row.shownAs}</label>
      </th>
      <td>{row.section ?? '–'}</td>
      <td className="number">{row.notes}</td>
      <td>
        {plan.criteria === 0
          ? 'no criteria'
          : row.unmarked === 0
            ? 'complete'
            : `${row.unmarked} of ${counted(plan.criteria, 'criterion', 'criteria')} missing`}
        {row.differing > 0 && <span className="quiet">; {row.differing} not settled</span>}
        {row.secondWaits && <span className="quiet">; second marker not finished</span>}
      </td>
      <td className="number">
        {row.percent === null ? '–' : withUnit(row.percent, '%', 1)}
        {row.late && <span className="quiet"> late</span>}
      </td>
      <td>
        {row.released ? (
          <>
            number {row.released.number}, <When at={row.released.at} timeZone={plan.course.timeZone} short />
            {row.released.otherProof && ', from another proof'}
          </>
        ) : (
          'no'
        )}
      </td>
      <td>
        <Link href={`${more}preview=${encodeURIComponent(row.token)}&page=${plan.page}#preview`}>
          What {row.shownAs} will see
        </Link>
      </td>
    </tr>
  );
}
