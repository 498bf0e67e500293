import type { Metadata } from 'next';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Page, PageHeader, Section } from '@/app/_ui/Page';
import { Tabs } from '@/app/_ui/Tabs';
import { getSameText } from '@/lib/work/same-text';
import { forPage } from '@/lib/http/page';
import { ResponseCharts } from './response-charts';
import { sameTextHref, SameTextLine } from './same-text-line';

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<{ text?: string; at?: string }> };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { text } = await searchParams;
  return { title: text === undefined ? 'Lines of one text' : `All lines of “${text}”` };
}

/** Lines of one text in several sizes, weights or faces, one below another, and how their gaps respond. */
export default async function SameTextPage({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { text: asked, at } = await searchParams;
  const sameText = await forPage(getSameText, { exerciseId, ...(asked !== undefined && { text: asked }) });
  const { exercise, course, text, texts, lines, response } = sameText;
  const trail = [
    { href: `/courses/${course.id}`, label: course.title },
    { href: `/exercises/${exerciseId}`, label: exercise.title },
  ];
  const back = (
    <ButtonLink small href={`/exercises/${exerciseId}`}>
      Back to the exercise
    </ButtonLink>
  );
  if (text === null)
    return (
      <Page width="wide">
        <PageHeader title="Together" trail={trail} />
        <EmptyState title="No text is repeated" action={back}>
          This page compares lines of one text in several sizes, weights or faces. This exercise has none.
        </EmptyState>
      </Page>
    );
  const oneSize = at === 'one-size';
  const to = (other: string, same = oneSize) => sameTextHref(exerciseId, other, same);
  return (
    <Page width="wide">
      <PageHeader
        title={`“${text}” together`}
        trail={trail}
        lead="One text in several sizes, weights or faces. What works in one may not work in another: look at them side by side."
        actions={back}
      />
      {texts.length > 1 && (
        <Tabs
          label="Repeated texts"
          tabs={texts.map((one) => ({ href: to(one.text), label: one.text, count: one.count }))}
          current={to(text)}
        />
      )}
      <Section
        title="The lines"
        lead={
          oneSize
            ? 'All at one size, so that shapes and gaps compare. This is not how they will be read.'
            : 'Each at its true size.'
        }
      >
        <Tabs
          label="Size of the lines"
          tabs={[
            { href: to(text, false), label: 'True size' },
            { href: to(text, true), label: 'All at one size' },
          ]}
          current={to(text)}
        />
        <ol className="same-text" role="list">
          {lines.map((line) => (
            <SameTextLine key={line.versionId} exerciseId={exerciseId} line={line} all={lines} oneSize={oneSize} />
          ))}
        </ol>
      </Section>
      <Section
        title="How the gaps follow size and weight"
        id="response"
        lead={
          response
            ? 'Beside what designers do. It is a hint with its source, and never a fault: your eye may have its reasons.'
            : undefined
        }
      >
        {response ? <ResponseCharts lines={lines} response={response} /> : <p>{notYet(sameText.shownAfter)}</p>}
      </Section>
    </Page>
  );
}

const notYet = (round: number | null): string =>
  round === null
    ? 'In this exercise the eye decides: nothing is plotted.'
    : `First the eye: the plot is shown once you have sent a proof of round ${round}.`;
