import Link from 'next/link';
import { readSelf } from '@/lib/account/read-self';
import { forPage } from '@/lib/http/page';
import { SiteBar } from './_ui/SiteBar';

/** The bar over every page, with what concerns the person who is signed in. */
export async function PersonBar() {
  const self = await forPage(readSelf);
  if (!self)
    return (
      <SiteBar>
        <Link href="/sign-in">Sign in</Link>
      </SiteBar>
    );
  return (
    <SiteBar home="/courses">
      <Link href="/courses">Courses</Link>
      <Link href="/practice">Practice</Link>
      <Link href="/account">{self.name}</Link>
    </SiteBar>
  );
}
