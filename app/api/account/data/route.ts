import { exportOwnData } from '@/lib/account/records';
import { route } from '@/lib/http/route';

export const GET = route(exportOwnData, {
  read: () => ({}),
  respond: (records) =>
    new Response(JSON.stringify(records, null, 2), {
      headers: {
        'content-type': 'application/json; charset=utf-8',
        'content-disposition': 'attachment; filename="kerncrit-my-data.json"',
        'cache-control': 'no-store',
      },
    }),
});
