import Link from 'next/link';
import type { memberView } from '@/lib/course/people';
import { Table } from '@/app/_ui/Table';
import { roleWords } from '../../role-words';

type Person = ReturnType<typeof memberView>;
type Props = {
  caption: string;
  people: readonly Person[];
  hrefOf: (id: string) => string | null;
  /** Address of a student’s term page. */ termOf?: (id: string) => string;
  withRole?: boolean;
  withSection?: boolean;
};

/** A list of people; for an instructor each name links to the page where they are changed. */
export function PeopleTable({ caption, people, hrefOf, termOf, withRole, withSection }: Props) {
  return (
    <Table caption={caption} captionHidden>
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">E-mail</th>
          {withRole && <th scope="col">Role</th>}
          {withSection && <th scope="col">Section</th>}
          <th scope="col">Accommodations</th>
          {termOf && <th scope="col">Term</th>}
        </tr>
      </thead>
      <tbody>
        {people.map((person) => {
          const href = hrefOf(person.id);
          return (
            <tr key={person.id}>
              <th scope="row">{href ? <Link href={href}>{person.name}</Link> : person.name}</th>
              <td>{person.email}</td>
              {withRole && <td>{roleWords(person.role)}</td>}
              {withSection && <td>{person.section ?? '—'}</td>}
              <td>{differences(person.accommodations)}</td>
              {termOf && (
                <td>
                  <Link href={termOf(person.id)} prefetch={false}>
                    Term<span className="visually-hidden"> of {person.name}</span>
                  </Link>
                </td>
              )}
            </tr>
          );
        })}
      </tbody>
    </Table>
  );
}

function differences({ moreTime, ...others }: Person['accommodations']): string {
  const reported = [moreTime ? `${moreTime}% more time` : '', Object.keys(others).length > 0 ? 'bench' : ''].filter(
    Boolean,
  );
  return reported.length > 0 ? reported.join(', ') : '—';
}
