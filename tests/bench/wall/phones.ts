import { get, type ClientRequest } from 'node:http';

/** So many phones at a wall, each with an open stream. Resolves when all have had the present state. */
export async function openPhones(origin: string, code: string, count: number) {
  const heard = Array.from({ length: count }, () => 0);
  const requests: ClientRequest[] = [];
  await Promise.all(
    heard.map(
      (_, phone) =>
        new Promise<void>((ready, failed) => {
          const request = get(`${origin}/api/w/${code}/live`, { agent: false }, (response) => {
            if (response.statusCode !== 200)
              return failed(new Error(`Phone ${phone} was answered ${response.statusCode}.`));
            response.on('data', (chunk: Buffer) => {
              heard[phone]! += chunk.toString().split('event: state').length - 1;
              if (heard[phone]! > 0) ready();
            });
            response.on('error', () => undefined);
          });
          request.on('error', failed);
          requests.push(request);
        }),
    ),
  );
  return {
    heard: () => heard.reduce((sum, one) => sum + one, 0),
    least: () => Math.min(...heard),
    close: () => {
      for (const request of requests) request.destroy();
    },
  };
}
