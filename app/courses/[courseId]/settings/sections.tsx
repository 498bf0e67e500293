import { Field } from '@/app/_ui/Field';
import { Form } from '@/app/_ui/Form';
import { Section } from '@/app/_ui/Section';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { addSectionAction, removeSectionAction, renameSectionAction } from './actions';

type Props = { courseId: string; sections: readonly { id: string; name: string }[] };

/** Parts of the course: each renamed in place, or taken away. */
export function Sections({ courseId, sections }: Props) {
  return (
    <Section
      title="Sections"
      id="sections"
      lead="If the course meets in parts. People are put into one on their own page, or by a join link that names it."
    >
      {sections.map(({ id, name }) => (
        <div key={id}>
          <Form action={renameSectionAction} inline label={`Rename ${name}`}>
            <Which courseId={courseId} sectionId={id} />
            <Field name={`section-${id}`} label="Name" defaultValue={name} autoComplete="off" />
            <SubmitButton kind="usual" small>
              Rename
            </SubmitButton>
          </Form>
          <Form action={removeSectionAction} inline label={`Take ${name} away`}>
            <Which courseId={courseId} sectionId={id} />
            <SubmitButton kind="text" small>
              Take “{name}” away; its people stay in the course
            </SubmitButton>
          </Form>
        </div>
      ))}
      <Form action={addSectionAction} inline label="Add a section">
        <input type="hidden" name="courseId" value={courseId} />
        <Field name="newSection" label="New section" autoComplete="off" />
        <SubmitButton kind="usual">Add</SubmitButton>
      </Form>
    </Section>
  );
}

function Which({ courseId, sectionId }: { courseId: string; sectionId: string }) {
  return (
    <>
      <input type="hidden" name="courseId" value={courseId} />
      <input type="hidden" name="sectionId" value={sectionId} />
    </>
  );
}
