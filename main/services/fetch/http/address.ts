import { fail, ok, type Result } from '../../../../geo/result.ts';
import { quote } from '../../../../geo/units/text.ts';

/** Why a server's address leads nowhere we go. */
export type AddressFault = 'host' | 'plain' | 'scheme' | 'password';

/**
 * A server's address as the user names it. Both https and http are taken: whoever types http means it. What a server
 * names in its answers is held by `mayAsk` besides.
 * @returns code `address` with a sentence where it is none
 */
export function readServerAddress(text: string): Result<URL> {
  const typed = text.trim();
  if (!URL.canParse(typed))
    return fail(
      'address',
      `${quote(typed)} is no server's address. It begins with https:// and names the server, as in https://example.org/api/interpreter.`,
    );
  const url = new URL(typed);
  const fault = faultOf(url);
  if (fault === 'password')
    return fail(
      'address',
      `The address of ${url.host} holds a user name or a password, which would lie in your settings for all to read. Leave them out.`,
    );
  if (fault !== undefined)
    return fail(
      'address',
      `${quote(typed)} begins with ${quote(url.protocol)}; a server's address begins with https:// or http://.`,
    );
  url.hash = '';
  return ok(url);
}

/**
 * Whether something may be asked under an address that a server gave, when the user agreed to ask `server`: the same
 * host, never from https to http, never with a password in it. From http to https of the same host is a step up.
 * @returns what speaks against it
 */
export function mayNotAsk(url: URL, server: URL): AddressFault | undefined {
  const fault = faultOf(url);
  if (fault !== undefined) return fault;
  const stepsUp =
    server.protocol === 'http:' && url.protocol === 'https:' && server.port === '' && url.port === '';
  if (url.hostname !== server.hostname) return 'host';
  if (server.protocol === 'https:' && url.protocol === 'http:') return 'plain';
  return url.port === server.port || stepsUp ? undefined : 'host';
}

function faultOf(url: URL): AddressFault | undefined {
  if (url.protocol !== 'https:' && url.protocol !== 'http:') return 'scheme';
  return url.username === '' && url.password === '' ? undefined : 'password';
}
