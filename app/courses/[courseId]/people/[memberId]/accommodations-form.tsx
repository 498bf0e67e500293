import type { Accommodations } from '@/shared/schemas/course';
import { Checkbox } from '@/app/_ui/Checkbox';
import { Field } from '@/app/_ui/Field';
import { Form } from '@/app/_ui/Form';
import { Section } from '@/app/_ui/Section';
import { Select } from '@/app/_ui/Select';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { setAccommodationsAction } from './actions';
import { WhichFields, type Which } from './which';

/** What is different for one student. Assistants see the time only. */
export function AccommodationsForm({ which, now }: { which: Which; now: Accommodations }) {
  return (
    <Section
      title="Different for this student"
      id="accommodations"
      lead="As your school has agreed with them. Assistants see only that there is more time; other students see nothing."
    >
      <Form action={setAccommodationsAction} label="Different for this student">
        <WhichFields {...which} />
        <Field
          name="moreTime"
          label="More time"
          hint="Per cent of each round’s time; 25 is a quarter longer, 0 is as for everyone."
          type="number"
          inputMode="numeric"
          min={0}
          max={300}
          defaultValue={String(now.moreTime ?? 0)}
          short
        />
        <Select
          name="workingView"
          label="Working view"
          hint="How large the bench’s large view starts."
          choices={views}
          defaultValue={String(now.workingView ?? 1)}
        />
        <Select
          name="benchTells"
          label="What the bench tells"
          optional
          placeholder="As the exercise says"
          choices={tells}
          defaultValue={now.benchTells ?? ''}
        />
        <Checkbox
          name="gapsSpoken"
          label="The openness of the chosen gap is spoken and written"
          defaultChecked={now.gapsSpoken ?? false}
        />
        <Checkbox
          name="singleKeysOff"
          label="The bench starts with single-key shortcuts off"
          defaultChecked={now.singleKeysOff ?? false}
        />
        <div className="actions">
          <SubmitButton kind="usual">Save</SubmitButton>
        </div>
      </Form>
    </Section>
  );
}

const views = [
  { value: '1', label: 'As for everyone' },
  { value: '1.5', label: 'One and a half times' },
  { value: '2', label: 'Twice' },
  { value: '3', label: 'Three times' },
  { value: '4', label: 'Four times' },
];

const tells = [
  { value: 'nothing', label: 'Nothing' },
  { value: 'contact', label: 'Contact' },
  { value: 'evenness', label: 'Contact and evenness' },
  { value: 'everything', label: 'Everything' },
];
