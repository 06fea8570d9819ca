import { assertNever, type Problem } from '../../../../geo/result.ts';
import { quote } from '../../../../geo/units/text.ts';
import type { AddressFault } from './address.ts';

/** What went wrong with one request, as data. Which of them may pass by themselves, whoever asks decides by kind. */
export type HttpTrouble =
  /** an address that is not asked at all, or a redirect to one */
  | { readonly kind: 'address'; readonly why: AddressFault; readonly to: string }
  | { readonly kind: 'redirect'; readonly why: AddressFault; readonly to: string }
  | { readonly kind: 'redirects'; readonly count: number }
  | { readonly kind: 'nameless' }
  | { readonly kind: 'unreachable'; readonly said: string }
  | { readonly kind: 'certificate'; readonly said: string }
  /** of connecting, between two bytes, or all in all */
  | { readonly kind: 'slow'; readonly of: 'connect' | 'silence' | 'total'; readonly ms: number }
  /** the connection ended before the answer did */
  | { readonly kind: 'broken'; readonly bytes: number }
  /** packed contents that end too early, or are none */
  | { readonly kind: 'cut'; readonly bytes: number }
  | { readonly kind: 'packing'; readonly said: string }
  | { readonly kind: 'large'; readonly of: 'packed' | 'unpacked'; readonly mostBytes: number }
  /** not HTTP, or not UTF-8 where text was asked for */
  | { readonly kind: 'garbled'; readonly said: string }
  | { readonly kind: 'cancelled' };

/** One request's failure: what exactly, and one sentence for the user. */
export interface HttpFault extends Problem {
  readonly trouble: HttpTrouble;
}

/** On its way out of a request. */
export class Faulted extends Error {
  readonly trouble: HttpTrouble;

  constructor(trouble: HttpTrouble) {
    super(trouble.kind);
    this.trouble = trouble;
  }
}

/** @param host the server that was asked, as the user knows it */
export function httpFault(host: string, trouble: HttpTrouble): HttpFault {
  return { code: `http.${trouble.kind}`, message: say(host, trouble), trouble };
}

function say(host: string, trouble: HttpTrouble): string {
  switch (trouble.kind) {
    case 'address':
      return `${host} names ${quote(trouble.to, 200)} as the place of its data, which ${sayWhyNot(trouble.why)}. Nothing was asked there. Use another server.`;
    case 'redirect':
      return `${host} sends on to ${quote(trouble.to, 200)}, which ${sayWhyNot(trouble.why)}. Nothing was sent there. It may be the login page of the network here, as in a hotel or on a campsite: open any page in the browser, log in, and try again. Where the server has moved for good, name its new address yourself.`;
    case 'redirects':
      return `${host} sends from one address to the next (${trouble.count} times) without an answer. Look at the server's address.`;
    case 'nameless':
      return `${host} was not found: no server of that name is known, or this computer has no network now. Look at the name and at the connection.`;
    case 'unreachable':
      return `${host} cannot be reached (${trouble.said}). Look at the connection, or try again later.`;
    case 'certificate':
      return `${host} cannot prove that it is ${host} (${trouble.said}). Nothing was sent. The network here may stand between; try another network, or ask whoever runs it.`;
    case 'slow':
      return saySlow(host, trouble);
    case 'broken':
      return `The connection to ${host} broke off after ${trouble.bytes} bytes of its answer. Try again.`;
    case 'cut':
      return `The answer of ${host} is cut short: its packed contents break off after ${trouble.bytes} bytes. Try again.`;
    case 'packing':
      return `The answer of ${host} cannot be unpacked (${trouble.said}). Try again, or use another server.`;
    case 'large':
      return `The answer of ${host} is larger than ${sayMegabytes(trouble.mostBytes)}${trouble.of === 'unpacked' ? ' once unpacked' : ''}, more than was asked for. It was not taken in. Use another server.`;
    case 'garbled':
      return `What ${host} answered cannot be read (${trouble.said}). Look at the server's address.`;
    case 'cancelled':
      return 'Cancelled.';
    default:
      return assertNever(trouble);
  }
}

function saySlow(host: string, { of, ms }: HttpTrouble & { readonly kind: 'slow' }): string {
  const time = ms < 1000 ? `${ms} ms` : `${Math.round(ms / 1000)} s`;
  if (of === 'connect') return `${host} did not answer the call within ${time}. Try again later.`;
  if (of === 'silence') return `${host} fell silent: nothing came for ${time}. Try again later.`;
  return `${host} did not finish its answer within ${time}. Try again later.`;
}

function sayWhyNot(why: AddressFault): string {
  switch (why) {
    case 'host':
      return 'is another server';
    case 'plain':
      return 'is not encrypted (http instead of https)';
    case 'scheme':
      return 'is no address of the web';
    case 'password':
      return 'holds a user name or a password';
    default:
      return assertNever(why);
  }
}

function sayMegabytes(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${Math.round(bytes / 1_000_000)} MB`;
}
