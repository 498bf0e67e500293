import { untouchedSpacing } from '@/shared/outline/place-letters';
import { numberText, perMille, signed, withUnit } from '@/shared/text/number';
import { drawnPack } from '@/tests/fixtures/drawn-pack';
import { Button, ButtonLink } from '../_ui/Button';
import { Disclosure, Menu } from '../_ui/Disclosure';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { EmptyState, Notice, Section } from '../_ui/Page';
import { SheetFrame } from '../_ui/SheetFrame';
import { Progress, Status, When } from '../_ui/Status';
import { Table } from '../_ui/Table';

export function TextParts() {
  return (
    <>
      <Section title="Text and numbers" lead="A lead says in a sentence what follows.">
        <p>
          The white between two letters is judged beside the white of the other gaps. An offset of {perMille(-12)}{' '}
          brings them together by {withUnit(12, '‰ em')}; at {withUnit(48, 'px')} that is {withUnit(0.58, 'px', 2)}.
          Change since the last round: {signed(8)}, {signed(-20)}, {signed(0)}. Mean of all {numberText(1234.5, 1)}.
        </p>
        <p>
          <When at="2026-11-24T22:05:00Z" timeZone="Europe/Vienna" /> ·{' '}
          <When at="2026-11-24T22:05:00Z" timeZone="America/New_York" short />
        </p>
        <p className="actions">
          <Progress done={7} of={12} what="line" verb="set" /> <Progress done={12} of={12} what="line" verb="set" />
        </p>
        <p className="actions">
          <Status kind="waiting">not begun</Status> <Status kind="going">being set</Status>{' '}
          <Status kind="done">sent</Status> <Status kind="late">late by a day</Status>
        </p>
      </Section>
      <Section title="Buttons and menus">
        <div className="actions">
          <Button kind="main">Send the proof</Button> <Button>Restore</Button> <Button kind="grave">Delete</Button>{' '}
          <Button kind="text">Leave it</Button>
          <Button disabled>Not open yet</Button> <Button small>Small</Button>{' '}
          <ButtonLink href="/parts">A link</ButtonLink>
          <Menu label="More">
            <Button>Copy to another course</Button>
            <ButtonLink href="/parts">Export</ButtonLink>
          </Menu>
        </div>
        <Disclosure summary="What happens to drafts?">
          <p>They move to the new version, pair by pair.</p>
        </Disclosure>
      </Section>
      <Section title="Notices">
        <Notice>Your proof was received.</Notice>
        <Notice kind="warning" title="Two lines are still as they came">
          Send them all the same, or go back to the bench.
        </Notice>
        <Notice kind="caution" title="Signs are set by codes">
          Spacing on traffic and exit signs follows the local code and a licensed practitioner, not the eye.
        </Notice>
        <EmptyState
          title="No exercise yet"
          action={
            <ButtonLink kind="main" href="/parts">
              Create the first exercise
            </ButtonLink>
          }
        >
          An exercise is a few lines of text to be spaced. Yours will be listed here by the date they are due.
        </EmptyState>
      </Section>
      <Section title="Tables">
        <Table caption="Offsets against the nearest reference, in 1/1000 em">
          <thead>
            <tr>
              <th scope="col">Pair</th>
              <th scope="col" className="number">
                Built-in
              </th>
              <th scope="col" className="number">
                Offset
              </th>
              <th scope="col" className="number">
                Total
              </th>
              <th scope="col">In words</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">A V</th>
              <td className="number">{perMille(-61)}</td>
              <td className="number">{perMille(-12)}</td>
              <td className="number">{perMille(-73)}</td>
              <td>a little tighter than the reference</td>
            </tr>
            <tr>
              <th scope="row">V E</th>
              <td className="number">{perMille(0)}</td>
              <td className="number">{perMille(18)}</td>
              <td className="number">{perMille(18)}</td>
              <td>about a third of a stem gap wider than the rest of the line</td>
            </tr>
          </tbody>
        </Table>
      </Section>
    </>
  );
}

export function SheetParts() {
  const pack = drawnPack('HOLLAnVOLT');
  const plain = untouchedSpacing(pack);
  const moved = { tracking: -10, offsets: plain.offsets.map((_, index) => (index === 2 ? -80 : index === 5 ? 90 : 0)) };
  const marks = [
    { gap: 2, fault: 'tight', strength: 3 },
    { gap: 5, fault: 'wide', strength: 2 },
  ] as const;
  return (
    <Section title="Sheets">
      <SheetFrame ground="light" caption="Drawn letters, light ground, with marks and ties">
        <LineDrawing
          pack={pack}
          spacing={moved}
          under={plain}
          marks={[...marks]}
          ties={[
            { from: 2, to: 2, sign: '1' },
            { from: 4, to: 7, sign: '2' },
          ]}
          baseline
        />
      </SheetFrame>
      <SheetFrame ground="dark" caption="True size: 48 px, on dark">
        <LineDrawing pack={pack} spacing={moved} size={{ value: 48, unit: 'px' }} marks={[...marks]} />
      </SheetFrame>
      <SheetFrame ground="light" caption="White between (hatch) and inside (dots)">
        <LineDrawing pack={pack} spacing={moved} looks={{ white: true, counters: true }} />
      </SheetFrame>
      <SheetFrame ground="dark" caption="The same on dark">
        <LineDrawing pack={pack} spacing={moved} looks={{ white: true, counters: true }} />
      </SheetFrame>
    </Section>
  );
}
