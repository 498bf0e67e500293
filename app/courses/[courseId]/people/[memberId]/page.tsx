import type { Metadata } from 'next';
import { getMember } from '@/lib/course/people';
import { forPage } from '@/lib/http/page';
import { ButtonLink } from '@/app/_ui/Button';
import { Notice, Page, PageHeader } from '@/app/_ui/Page';
import { When } from '@/app/_ui/Status';
import { leadsCourse, teaches } from '@/shared/schemas/course';
import { CourseFrame } from '../../../course-frame';
import { roleWords } from '../../../role-words';
import { AccommodationsForm, CourseMaking, PasswordLink, PutBack, Removal, RoleAndSection } from './member-forms';

type Props = { params: Promise<{ courseId: string; memberId: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await forPage(getMember, await params)).person.name };
}

export default async function Person({ params }: Props) {
  const found = await forPage(getMember, await params);
  const { course, person, sections, self } = found;
  const which = { courseId: course.id, memberId: person.id };
  const since = (
    <>
      {roleWords(person.role)}
      {person.section && `, section ${person.section}`}, since <When at={person.joinedAt} timeZone={course.timeZone} />
    </>
  );
  return (
    <>
      <CourseFrame course={course} current="people" />
      <Page>
        <PageHeader
          title={person.name}
          trail={[{ href: `/courses/${course.id}/people`, label: 'People' }]}
          kicker={person.email}
          lead={since}
          actions={
            !teaches(person.role) && (
              <ButtonLink href={`/courses/${course.id}/people/${person.id}/term`}>The term on one page</ButtonLink>
            )
          }
        />
        {person.removedAt ? (
          <Notice kind="warning" title="Removed from the course">
            <PutBack which={which} at={<When at={person.removedAt} timeZone={course.timeZone} />} />
          </Notice>
        ) : (
          <>
            <RoleAndSection which={which} role={person.role} sectionId={person.sectionId} sections={sections} />
            {!teaches(person.role) && <AccommodationsForm which={which} now={person.accommodations} />}
            {leadsCourse(person.role) && found.iMayLetMakeCourses && !self && (
              <CourseMaking which={which} name={person.name} allowed={person.mayMakeCourses} />
            )}
            <PasswordLink which={which} name={person.name} state={found.passwordLink} />
            <Removal which={which} name={person.name} self={self} />
          </>
        )}
      </Page>
    </>
  );
}
