'use client';
import { Checkbox, DateTimeField, Field, TextArea } from '../_ui/Field';
import { ConfirmDialog } from '../_ui/ConfirmDialog';
import { Form, SubmitButton } from '../_ui/Form';
import { RadioGroup, Select } from '../_ui/Select';
import { Section } from '../_ui/Page';
import { typedValues, type FormAction } from '@/shared/schemas/form-state';

const refuse: FormAction = async (_before, form) => ({
  status: 'failed',
  message: 'Nothing was saved.',
  fields: { title: 'Give the exercise a title of 1 to 120 characters.', ground: 'Choose a ground.' },
  values: typedValues(form),
});

export function FormParts() {
  return (
    <Section title="Forms">
      <div className="reading">
        <Form action={refuse} label="Example">
          <Field name="title" label="Title" hint="As students see it in the list." />
          <TextArea name="brief" label="Brief" optional />
          <Select
            name="face"
            label="Face"
            choices={[
              { value: 'a', label: 'Lato Bold', group: 'Sans' },
              { value: 'b', label: 'Vollkorn', group: 'Serif' },
            ]}
            defaultValue="b"
          />
          <RadioGroup
            name="ground"
            label="Ground"
            choices={[
              { value: 'light', label: 'Light' },
              { value: 'dark', label: 'Dark', hint: 'Light letters spread.' },
            ]}
          />
          <Checkbox name="blind" label="Hide names while marking" hint="Can be lifted later." />
          <DateTimeField name="due" label="Due" timeZone="Europe/Vienna" defaultValue="2026-12-01T18:00" />
          <Field name="size" label="Size" type="number" short defaultValue={48} />
          <div className="actions">
            <SubmitButton>Save</SubmitButton>
            <ConfirmDialog
              label="Delete…"
              title="Delete this exercise?"
              href="/parts"
              form={<SubmitButton kind="grave">Delete</SubmitButton>}
            >
              <p>Drafts and proofs are kept for thirty days.</p>
            </ConfirmDialog>
          </div>
        </Form>
      </div>
    </Section>
  );
}
