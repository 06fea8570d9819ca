import { connect } from 'node:net';

/** Sends bytes as they are and reads until the host ends the connection (or a while has passed). */
export function raw(port: number, text: string, waitMs = 2000): Promise<string> {
  return new Promise((resolve) => {
    let answer = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(text));
    const done = () => {
      socket.destroy();
      resolve(answer);
    };
    const timer = setTimeout(done, waitMs);
    socket.on('data', (data) => {
      answer += data.toString('latin1');
    });
    socket.on('error', () => {});
    socket.on('close', () => {
      clearTimeout(timer);
      done();
    });
  });
}

export function request(
  line: string,
  headers: Readonly<Record<string, string | undefined>>,
  body = '',
): string {
  const all = {
    ...headers,
    Connection: 'close',
    ...(body === '' ? {} : { 'Content-Length': String(Buffer.byteLength(body)) }),
  };
  const lines = Object.entries(all).flatMap(([name, value]) =>
    value === undefined ? [] : [`${name}: ${value}`],
  );
  return `${line} HTTP/1.1\r\n${lines.join('\r\n')}\r\n\r\n${body}`;
}

export function statusOf(answer: string): number {
  return Number(/^HTTP\/1\.1 (\d{3})/.exec(answer)?.[1] ?? 0);
}
