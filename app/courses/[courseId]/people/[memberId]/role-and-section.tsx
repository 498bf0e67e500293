import { Form } from '@/app/_ui/Form';
import { RadioGroup } from '@/app/_ui/RadioGroup';
import { Section } from '@/app/_ui/Section';
import { Select } from '@/app/_ui/Select';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { roleChoices } from '../../../role-words';
import { changeRoleAction, changeSectionAction } from './actions';
import { WhichFields, type Which } from './which';

type Props = {
  which: Which;
  role: string;
  sectionId: string | null;
  sections: readonly { id: string; name: string }[];
};

export function RoleAndSection({ which, role, sectionId, sections }: Props) {
  return (
    <>
      <Section title="Role" id="role">
        <Form action={changeRoleAction} label="Role">
          <WhichFields {...which} />
          <RadioGroup name="role" label="In this course" choices={roleChoices} defaultValue={role} />
          <div className="actions">
            <SubmitButton kind="usual">Change the role</SubmitButton>
          </div>
        </Form>
      </Section>
      {sections.length > 0 && (
        <Section title="Section" id="section">
          <Form action={changeSectionAction} label="Section">
            <WhichFields {...which} />
            <Select
              name="sectionId"
              label="Section"
              optional
              placeholder="No section"
              choices={sections.map(({ id, name }) => ({ value: id, label: name }))}
              defaultValue={sectionId ?? ''}
            />
            <div className="actions">
              <SubmitButton kind="usual">Change the section</SubmitButton>
            </div>
          </Form>
        </Section>
      )}
    </>
  );
}
