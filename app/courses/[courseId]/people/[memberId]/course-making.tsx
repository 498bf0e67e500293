import { Form } from '@/app/_ui/Form';
import { Section } from '@/app/_ui/Section';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { allowCourseMakingAction } from './actions';
import { WhichFields, type Which } from './which';

export function CourseMaking({ which, name, allowed }: { which: Which; name: string; allowed: boolean }) {
  return (
    <Section title="Opening courses" id="course-making">
      <p>{allowed ? `${name} may open courses of their own.` : `${name} can’t open courses of their own.`}</p>
      <Form action={allowCourseMakingAction} label="Opening courses">
        <WhichFields {...which} />
        <input type="hidden" name="allowed" value={allowed ? 'no' : 'yes'} />
        <div className="actions">
          <SubmitButton kind="usual">{allowed ? 'No longer allow it' : 'Allow it'}</SubmitButton>
        </div>
      </Form>
    </Section>
  );
}
