import type { ComponentProps } from 'react';
import { Disclosure } from '@/app/_ui/Disclosure';
import { Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Section } from '@/app/_ui/Page';
import { RadioGroup, Select } from '@/app/_ui/Select';
import { ShownLink } from '@/app/_ui/ShownLink';
import { When } from '@/app/_ui/Status';
import { Table } from '@/app/_ui/Table';
import { roleChoices, roleWords } from '@/app/courses/role-words';
import { makeJoinLinkAction, revokeJoinLinkAction } from './actions';

type JoinLink = { id: string; role: string; section: string | null; madeBy: string | null; expiresAt: Date };
type Props = {
  courseId: string;
  timeZone: string;
  sections: ComponentProps<typeof MakeJoinLink>['sections'];
  links: readonly JoinLink[];
  open: boolean;
};

/** Inviting people: a new link, and the links that still work. */
export function JoinLinks({ courseId, timeZone, sections, links, open }: Props) {
  return (
    <Section
      title="Invite"
      id="invite"
      lead="Anyone with the link can join in the role you choose, with a new or existing account."
    >
      <Disclosure summary="Make a join link" open={open}>
        <MakeJoinLink courseId={courseId} sections={sections} />
      </Disclosure>
      {links.length > 0 && (
        <Table caption="Links that let people in now. They can’t be shown again; make a new one if yours is lost.">
          <thead>
            <tr>
              <th scope="col">Role</th>
              <th scope="col">Section</th>
              <th scope="col">Works until</th>
              <th scope="col">Made by</th>
              <th scope="col">Revoke</th>
            </tr>
          </thead>
          <tbody>
            {links.map((link) => (
              <tr key={link.id}>
                <th scope="row">{roleWords(link.role)}</th>
                <td>{link.section ?? '—'}</td>
                <td>
                  <When at={link.expiresAt} timeZone={timeZone} />
                </td>
                <td>{link.madeBy ?? '—'}</td>
                <td>
                  <Form action={revokeJoinLinkAction} inline label={`Revoke the ${link.role} link`}>
                    <input type="hidden" name="courseId" value={courseId} />
                    <input type="hidden" name="joinLinkId" value={link.id} />
                    <SubmitButton kind="grave" small>
                      Revoke
                    </SubmitButton>
                  </Form>
                </td>
              </tr>
            ))}
          </tbody>
        </Table>
      )}
    </Section>
  );
}

type MakeJoinLinkProps = { courseId: string; sections: readonly { id: string; name: string }[] };

function MakeJoinLink({ courseId, sections }: MakeJoinLinkProps) {
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
          Create link
        </SubmitButton>
      </div>
      <ShownLink name="joinLink" label="The link" hint="Copy it now: it can’t be shown again." />
    </Form>
  );
}
