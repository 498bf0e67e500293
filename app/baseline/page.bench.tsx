import { getAccount } from '@/lib/account/account';
import { forPage } from '@/lib/http/page';

/** In benchmarks only: a trivial page for a signed-in person, as a baseline for other pages. */
export default async function Baseline() {
  const { name } = await forPage(getAccount);
  return <p>{name}</p>;
}
