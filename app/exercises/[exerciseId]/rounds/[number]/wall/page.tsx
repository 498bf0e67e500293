import type { Metadata } from 'next';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Notice, Page, PageHeader } from '@/app/_ui/Page';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Table } from '@/app/_ui/Table';
import { When } from '@/app/_ui/Status';
import { closeWallAction, openWallAction } from '@/app/wall/actions';
import { forPage } from '@/lib/http/page';
import { listWalls } from '@/lib/wall/walls';
import { counted, withUnit } from '@/shared/text/number';

type Props = { params: Promise<{ exerciseId: string; number: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Walls of round ${(await params).number}` };
}

/** Chooses the line for the wall; lists walls that are open. */
export default async function WallsPage({ params }: Props) {
  const { exerciseId, number } = await params;
  const { course, exercise, round, senders, specimens } = await forPage(listWalls, { exerciseId, roundNumber: number });
  return (
    <Page width="wide">
      <PageHeader
        title={`The wall of round ${round.number}`}
        kicker={round.title || undefined}
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exercise.id}`, label: exercise.title },
        ]}
        lead={`One line on the projector, as each student has spaced it, without names. ${counted(senders, 'student')} sent a proof; proofs sent while the wall is open appear on it.`}
      />
      {specimens.length === 0 ? (
        <EmptyState title="No lines yet">The exercise has no lines, so there is nothing to put on the wall.</EmptyState>
      ) : (
        <Table caption="Lines of the exercise">
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col">Face and size</th>
              <th scope="col">Wall</th>
            </tr>
          </thead>
          <tbody>
            {specimens.map((specimen, index) => (
              <tr key={specimen.id}>
                <th scope="row">{specimen.text}</th>
                <td>
                  {specimen.face && `${specimen.face}, `}
                  {withUnit(specimen.size.value, specimen.size.unit)}, {specimen.ground} ground
                </td>
                <td>
                  {specimen.wall ? (
                    <OpenWall
                      wall={specimen.wall}
                      name={`line ${index + 1}, ${specimen.text}`}
                      timeZone={course.timeZone}
                    />
                  ) : (
                    <Form
                      action={openWallAction}
                      label={`Open the wall for line ${index + 1}, ${specimen.text}`}
                      inline
                    >
                      <input type="hidden" name="exerciseId" value={exercise.id} />
                      <input type="hidden" name="roundNumber" value={round.number} />
                      <input type="hidden" name="specimenId" value={specimen.id} />
                      <SubmitButton kind="usual" pending="Opening…">
                        Put on the wall
                      </SubmitButton>
                    </Form>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </Table>
      )}
      <Notice>
        Students’ work is about to be seen by the whole room. It appears without names, but people may know their own
        line, and anyone watching a line arrive may guess whose it is. Ask first, leave out anyone who asks, and close
        the wall afterwards: that ends its link for phones and forgets where the room pointed. A wall that is left open
        ends by itself after twelve hours.
      </Notice>
    </Page>
  );
}

type Wall = NonNullable<Awaited<ReturnType<typeof listWalls>>['specimens'][number]['wall']>;

function OpenWall({ wall, name, timeZone }: { wall: Wall; name: string; timeZone: string }) {
  return (
    <div className="actions">
      <ButtonLink small kind="main" plainLink href={`/wall/${wall.id}`}>
        Go to the wall
      </ButtonLink>
      <Form action={closeWallAction} label={`Close the wall of ${name}`} inline>
        <input type="hidden" name="wallId" value={wall.id} />
        <SubmitButton kind="usual" pending="Closing…">
          Close it
        </SubmitButton>
      </Form>
      <span className="note-size quiet">
        open since <When at={wall.openedAt} timeZone={timeZone} short />
        {wall.by && `, by ${wall.by}`}
      </span>
    </div>
  );
}
