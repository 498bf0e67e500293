import Link from 'next/link';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Section } from '@/app/_ui/Page';
import { RadioGroup, Select } from '@/app/_ui/Select';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { setLineStartAction } from '@/app/exercises/[exerciseId]/plan/actions';
import type { SpecimenView } from '@/lib/rows/specimen';
import type { StartMade } from '@/shared/schemas/specimen';

const madeWords: Record<StartMade, string> = {
  'by-hand': 'as you set it on the bench',
  'one-gap': 'one gap off',
  tight: 'tight everywhere',
  area: 'made from area alone',
};

const choices = [
  { value: 'built-in', label: 'The face’s own spacing' },
  { value: 'one-gap', label: 'One gap off, by the amount below' },
  { value: 'tight', label: 'Tight everywhere, by the amount below' },
  { value: 'area', label: 'Made from area alone: every gap holds the same white' },
  { value: 'by-hand', label: 'As I set it on the bench of this line' },
];

/** From what students begin this line: the face's own spacing, or one that is wrong on purpose. */
export function StartPart({ exerciseId, specimen }: { exerciseId: string; specimen: SpecimenView }) {
  const { start } = specimen.details;
  const letters = specimen.pack.letters.map((glyph) => specimen.pack.glyphs[glyph]!.cluster);
  const gaps = letters.slice(1).map((right, gap) => ({
    value: String(gap),
    label: `${letters[gap]}${right}, gap ${gap + 1}`,
  }));
  return (
    <Section
      id="start"
      title="What students begin from"
      lead="A line can begin wrong on purpose, for students to repair. The start never counts as a student’s work, and proofs show what the line began from."
    >
      {start && (
        <SheetFrame
          ground={specimen.ground}
          caption={`Students will begin from this: ${madeWords[start.made]}. The outlines under it are the face’s own spacing.`}
        >
          <LineDrawing
            pack={specimen.pack}
            spacing={start.spacing}
            under={{ tracking: 0, offsets: specimen.pack.builtIn.map(() => 0) }}
            label={`${specimen.text}, as students begin it`}
          />
        </SheetFrame>
      )}
      <Form action={setLineStartAction} label="What students begin from">
        <input type="hidden" name="specimenId" value={specimen.id} />
        <input type="hidden" name="number" value={specimen.number} />
        <RadioGroup name="start" label="Begins from" choices={choices} defaultValue={start?.made ?? 'built-in'} />
        <Select name="gap" label="The gap that is off" choices={gaps} defaultValue="0" />
        <Field
          name="by"
          label="Amount, in thousandths of an em"
          short
          inputMode="numeric"
          defaultValue="40"
          hint="One gap off: 40 opens it, −40 closes it. Tight everywhere: 40 takes 40 off every gap."
        />
        <p>
          To set the start yourself, space the line{' '}
          <Link href={`/exercises/${exerciseId}/bench/${specimen.id}`}>on its bench</Link> as it should begin, then
          choose “As I set it on the bench of this line” here.
        </p>
        <div className="actions">
          <SubmitButton kind="usual" pending="Saving…">
            Save what students begin from
          </SubmitButton>
        </div>
      </Form>
    </Section>
  );
}
