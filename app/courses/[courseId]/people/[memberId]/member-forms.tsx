import type { ReactNode } from 'react';
import { Checkbox, Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Section } from '@/app/_ui/Page';
import { RadioGroup, Select } from '@/app/_ui/Select';
import { ShownLink } from '@/app/_ui/ShownLink';
import { roleChoices } from '@/app/courses/role-words';
import type { Accommodations } from '@/shared/schemas/course';
import {
  allowCourseMakingAction,
  changeRoleAction,
  changeSectionAction,
  handOverPasswordLinkAction,
  putBackMemberAction,
  removeMemberAction,
  setAccommodationsAction,
} from '../actions';

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

/** One student's accommodations. Assistants see only the extra time. */
export function AccommodationsForm({ which, now }: { which: Which; now: Accommodations }) {
  return (
    <Section
      title="Accommodations"
      id="accommodations"
      lead="As your school has agreed with them. Assistants see only that there is more time; other students see nothing."
    >
      <Form action={setAccommodationsAction} label="Accommodations">
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

type State = 'yourself' | 'by mail' | 'teaches' | 'elsewhere' | 'can be made';

export function PasswordLink({ which, name, state }: { which: Which; name: string; state: State }) {
  if (state === 'yourself') return null;
  return (
    <Section title="A forgotten password" id="password">
      {state === 'by mail' && <p>“Forgotten your password?” on the sign-in page sends {name} a link by mail.</p>}
      {state === 'teaches' && (
        <p>
          {name} teaches, so only the person who runs the server can create a link for a new password, at its console.
        </p>
      )}
      {state === 'elsewhere' && (
        <p>
          {name} is or was in a course that you do not run, so only the person who runs the server can create a link for
          a new password, at its console.
        </p>
      )}
      {state === 'can be made' && (
        <Form action={handOverPasswordLinkAction} label="A link for a new password">
          <WhichFields {...which} />
          <p>
            Create a link and give it to {name} in person. Anyone who opens it can sign in as {name}, so make sure that
            it is them; that you made it is written down.
          </p>
          <div className="actions">
            <SubmitButton kind="usual">Create a password link</SubmitButton>
          </div>
          <ShownLink
            name="passwordLink"
            label="The link"
            hint="Copy it now: it can’t be shown again. It works once, for a day; a new one ends it."
          />
        </Form>
      )}
    </Section>
  );
}

/** Can be undone at once on the same page, so it doesn't ask first. */
export function Removal({ which, name, self }: { which: Which; name: string; self: boolean }) {
  return (
    <Section title={self ? 'Leave the course' : 'Remove from the course'} id="removal">
      <p>
        {self
          ? 'You lose the course at once and are signed out. Another instructor can restore you.'
          : `${name} is signed out and can’t open the course any more. Their work is kept, and you can restore them.`}
      </p>
      <Form action={removeMemberAction} label={self ? 'Leave the course' : 'Remove from the course'}>
        <WhichFields {...which} />
        <div className="actions">
          <SubmitButton kind="grave">{self ? 'Leave the course' : `Remove ${name}`}</SubmitButton>
        </div>
      </Form>
    </Section>
  );
}

export function PutBack({ which, at }: { which: Which; at: ReactNode }) {
  return (
    <Form action={putBackMemberAction} label="Restore">
      <WhichFields {...which} />
      <p>Since {at} this person can’t open the course. Their work is kept.</p>
      <div className="actions">
        <SubmitButton kind="usual">Restore</SubmitButton>
      </div>
    </Form>
  );
}

type Which = { courseId: string; memberId: string };

/** The hidden fields that identify the member a form is about. */
function WhichFields({ courseId, memberId }: Which) {
  return (
    <>
      <input type="hidden" name="courseId" value={courseId} />
      <input type="hidden" name="memberId" value={memberId} />
    </>
  );
}
