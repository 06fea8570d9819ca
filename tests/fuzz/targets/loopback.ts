import { request as httpRequest } from 'node:http';
import { serveHttp } from '../../../main/loopback/http-host.ts';
import { hostileText } from '../make/hostile.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { type Random, randomFrom } from '../make/random.ts';
import { jsonTarget } from '../target.ts';
import { type Mutation, mutated, mutation, program } from './calls.ts';

interface Served {
  readonly port: number;
  readonly key: string;
}
let served: Promise<Served> | undefined;

async function serve(): Promise<Served> {
  const { dispatch, backend } = await program();
  const host = await serveHttp({
    dispatch,
    uploads: backend.uploads,
    assets: new Map(),
    tileAddress: () => undefined,
    onSpentCode: () => {},
    onGone: () => {},
    now: () => performance.now(),
  });
  const port = Number(new URL(host.origin).port);
  const code = new URL(host.newAddress()).hash.slice(1);
  const answer = await send(port, {
    path: '/session',
    key: '',
    type: 'application/json',
    body: Buffer.from(JSON.stringify({ code })),
  });
  return { port, key: (JSON.parse(answer.text) as { key: string }).key };
}

/** Changed bodies, addresses and kinds of content, through the host on the loopback address. */
export const loopback = jsonTarget<Mutation>({
  name: 'loopback host',
  weight: 1,
  make: mutation,
  async check(asked) {
    served ??= serve();
    const { port, key } = await served;
    const { sound, logged } = await program();
    const random = randomFrom(asked.seed);
    const [name, request] = random.chance(0.5)
      ? mutated(sound(), asked)
      : sound()[asked.which % sound().length]!;
    const text = new TextEncoder().encode(JSON.stringify(request) ?? '');
    const answer = await send(port, {
      path: random.pick([
        `/call/${name}`,
        `/call/${name}`,
        `/call/${inAddress(random)}`,
        `/file?name=${inAddress(random)}`,
        '/session',
        '/x',
      ]),
      key: random.chance(0.9) ? key : 'none',
      type: random.pick(['application/json', 'application/json', 'text/plain', 'application/octet-stream']),
      body: Buffer.from(random.chance(0.5) ? mutateBytes(text, random) : text),
    });
    const inside = logged.splice(0).map(String);
    if (inside.length > 0) return `went wrong inside: ${inside.join('; ')}`;
    return answer.status >= 200 && answer.status < 500
      ? undefined
      : `answers ${answer.status}: ${answer.text.slice(0, 200)}`;
  },
});

/** A name as it may stand in an address; half a character has no encoding. */
function inAddress(random: Random): string {
  return encodeURIComponent(Buffer.from(hostileText(random).slice(0, 300)).toString());
}

interface Sent {
  readonly path: string;
  readonly key: string;
  readonly type: string;
  readonly body: Buffer;
}

function send(port: number, { path, key, type, body }: Sent): Promise<{ status: number; text: string }> {
  return new Promise((resolve, reject) => {
    const headers = {
      'Content-Type': type,
      'Content-Length': body.length,
      Origin: `http://127.0.0.1:${port}`,
      Authorization: `Bearer ${key}`,
    };
    const asked = httpRequest({ host: '127.0.0.1', port, path, method: 'POST', headers }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, text: Buffer.concat(chunks).toString() }),
      );
      response.on('error', reject);
    });
    asked.on('error', reject);
    asked.end(body);
  });
}
