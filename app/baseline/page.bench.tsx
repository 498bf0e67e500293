import { getAccount } from '@/lib/account/account';
import { forPage } from '@/lib/http/page';

/** In benchmarks only: a trivial page that knows who is asking, to hold other pages against. */
export default async function Baseline() {
  const { name } = await forPage(getAccount);
  return <p>{name}</p>;
}
