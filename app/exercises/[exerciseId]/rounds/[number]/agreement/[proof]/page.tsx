import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { RadioGroup } from '@/app/_ui/Select';
import { Table } from '@/app/_ui/Table';
import { TextArea } from '@/app/_ui/Field';
import { When } from '@/app/_ui/Status';
import { getMarkDifference } from '@/lib/review/settle';
import { forPage } from '@/lib/http/page';
import { withUnit } from '@/shared/text/number';
import { settleAction } from '@/app/exercises/[exerciseId]/rounds/[number]/actions';

type Props = {
  params: Promise<{ exerciseId: string; number: string; proof: string }>;
  searchParams: Promise<{ criterion?: string; settled?: string }>;
};

export const metadata: Metadata = { title: 'Two markers’ marks' };

/** One proof as two markers judged it, the form that settles their differences, and every change of every mark. */
export default async function DifferencePage({ params, searchParams }: Props) {
  const [{ proof: token }, { criterion: asked, settled }] = await Promise.all([params, searchParams]);
  const shown = await forPage(getMarkDifference, { proof: decodeURIComponent(token) });
  const { course, exercise, round, proof, markers, criteria } = shown;
  const here = `/exercises/${exercise.id}/rounds/${round.number}`;
  const chosen =
    criteria.find(({ versionId }) => versionId === asked) ??
    criteria.find(({ effective }) => effective.from === 'differs') ??
    criteria[0];
  const left = criteria.filter(({ effective }) => effective.from === 'differs').length;
  return (
    <Page width="wide">
      <PageHeader
        title={`Two markers’ marks: ${proof.shownAs}`}
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exercise.id}`, label: exercise.title },
          { href: `${here}/agreement`, label: `Agreement in round ${round.number}` },
        ]}
        lead={`First marker ${markers.first}, second marker ${markers.second}. Their marks stay as they were given; what is settled here counts in their place.`}
        actions={
          proof.specimenId ? (
            <ButtonLink href={`/critique/${proof.token}/${proof.specimenId}`}>Look at the proof</ButtonLink>
          ) : undefined
        }
      />
      {shown.released && (
        <Notice>
          This round has been released to this student. What went out stays as it is; a level settled now reaches the
          student with the next release, as a correction.
        </Notice>
      )}
      {settled && (
        <Notice live="polite">
          {left > 0
            ? `Settled. ${left} more to settle on this proof.`
            : 'Settled. Nothing is left to settle on this proof.'}
        </Notice>
      )}
      <Table caption="Both markers’ levels, and the one that counts">
        <thead>
          <tr>
            <th scope="col">Criterion</th>
            <th scope="col">{markers.first}</th>
            <th scope="col">{markers.second}</th>
            <th scope="col">Counts</th>
            <th scope="col">Because</th>
          </tr>
        </thead>
        <tbody>
          {criteria.map((one) => (
            <tr key={one.versionId}>
              <th scope="row">
                {shown.maySettle ? (
                  <Link
                    href={`${here}/agreement/${proof.token}?criterion=${one.versionId}#settle`}
                    aria-current={one === chosen ? 'true' : undefined}
                  >
                    {one.title}
                  </Link>
                ) : (
                  one.title
                )}
              </th>
              <td>{named(one, one.first)}</td>
              <td>{named(one, one.second)}</td>
              <td>{one.effective.level === null ? '–' : <strong>{named(one, one.effective.level)}</strong>}</td>
              <td>{countsWords[one.effective.from]}</td>
            </tr>
          ))}
        </tbody>
      </Table>
      {shown.maySettle && chosen && (
        <Settle key={`${chosen.versionId} ${chosen.version}`} criterion={chosen} proof={proof.token} />
      )}
      <Section
        title="How the marks came about"
        lead="Every change to both markings and to what was settled, with its author and reason. This list can’t be changed."
      >
        <Table caption="Every change of every mark of this proof" captionHidden>
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col">Marking</th>
              <th scope="col">Criterion</th>
              <th scope="col">Change</th>
              <th scope="col">By</th>
              <th scope="col">Reason</th>
            </tr>
          </thead>
          <tbody>
            {shown.history.map((event, index) => (
              <tr key={index}>
                <td>
                  <When at={event.at} timeZone={course.timeZone} short />
                </td>
                <td>{event.slot}</td>
                <td>{event.criterion}</td>
                <td>
                  {event.before ?? 'not marked'} → {event.after ?? 'not marked'}
                </td>
                <td>{event.who ?? 'a former member'}</td>
                <td>{event.why || '–'}</td>
              </tr>
            ))}
          </tbody>
        </Table>
      </Section>
    </Page>
  );
}

type Criterion = Awaited<ReturnType<typeof getMarkDifference>>['criteria'][number];

const named = ({ levels }: Criterion, level: number | null): string =>
  level === null ? 'not marked' : levels[level]!.title;

/** The form for one criterion; the table above chooses which. */
function Settle({ criterion, proof }: { criterion: Criterion; proof: string }) {
  const { versionId, title, description, weight, levels, settled, version } = criterion;
  const choices = levels.map((level, index) => ({
    value: String(index),
    label: `${level.title}, ${withUnit(level.points, '%')}`,
  }));
  return (
    <Section
      id="settle"
      title={<>Settle “{title}”</>}
      lead={
        <>
          {description && `${description} `}Weight {weight}.
        </>
      }
    >
      <Form action={settleAction} label={`Settle ${title}`}>
        <input type="hidden" name="proof" value={proof} />
        <input type="hidden" name="criterionVersionId" value={versionId} />
        <input type="hidden" name="version" value={version} />
        <RadioGroup
          name="level"
          label="The level that counts"
          row
          defaultValue={settled === null ? undefined : String(settled)}
          choices={settled === null ? choices : [...choices, { value: 'none', label: 'Undo the settlement' }]}
        />
        <TextArea
          name="why"
          label="Why"
          rows={2}
          maxLength={500}
          hint="Kept with the mark and your name. Students do not see it."
        />
        <div className="actions">
          <SubmitButton pending="Settling…">{settled === null ? 'Settle' : 'Settle again'}</SubmitButton>
        </div>
      </Form>
    </Section>
  );
}

const countsWords = {
  settled: 'settled',
  agreed: 'the two agree',
  differs: 'they differ; until this is settled, the first marker’s level',
  first: 'only one of them judged this',
  'second-waits': 'the second marker has not finished',
} as const;
