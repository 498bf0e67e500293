import { Field } from '@/app/_ui/Field';
import { Form } from '@/app/_ui/Form';
import { RadioGroup } from '@/app/_ui/RadioGroup';
import { Select } from '@/app/_ui/Select';
import { ShownLink } from '@/app/_ui/ShownLink';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { roleChoices } from '../../role-words';
import { makeJoinLinkAction } from './actions';

type Props = { courseId: string; sections: readonly { id: string; name: string }[] };

export function MakeJoinLink({ courseId, sections }: Props) {
  return (
    <Form action={makeJoinLinkAction} label="Make a join link">
      <input type="hidden" name="courseId" value={courseId} />
      <RadioGroup name="role" label="They join as" choices={roleChoices} defaultValue="student" />
      {sections.length > 0 && (
        <Select
          name="sectionId"
          label="Section"
          optional
          placeholder="No section"
          choices={sections.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
      <Field
        name="days"
        label="Works for"
        hint="Days, 1 to 180; for assistants and instructors at most 14."
        type="number"
        inputMode="numeric"
        min={1}
        max={180}
        defaultValue="14"
        short
      />
      <div className="actions">
        <SubmitButton kind="usual" pending="Making…">
          Make the link
        </SubmitButton>
      </div>
      <ShownLink name="joinLink" label="The link" hint="Copy it now: it can’t be shown again." />
    </Form>
  );
}
