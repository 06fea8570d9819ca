import type { RefuseAddress } from '../../../../geo/fetch/region/read-index.ts';
import { mayNotAsk } from '../http/address.ts';

/** Files are asked for on the server alone that the user agreed to. */
export function refuseOthers(server: URL): RefuseAddress {
  return (text) => {
    if (!URL.canParse(text)) return 'has no address that can be read';
    switch (mayNotAsk(new URL(text), server)) {
      case undefined:
        return undefined;
      case 'host':
        return `lies on another server than ${server.host}`;
      case 'plain':
        return 'would come unencrypted (http instead of https)';
      case 'scheme':
        return 'has no address of the web';
      case 'password':
        return 'has a password in its address';
    }
  };
}

/** What the server calls a page for people, whatever was asked of it. */
export function isPage(contentType: string | undefined): boolean {
  return /^\s*(?:text\/html|application\/xhtml)/iu.test(contentType ?? '');
}

/** A status that is no answer, as a sentence. @param what `the list of regions`, `the map of Denmark` */
export function sayStatus(host: string, status: number, what: string): string {
  switch (status) {
    case 404:
    case 410:
      return `${host} has not got ${what} (${status}). Fetch the list of regions anew, or look at the server's address.`;
    case 401:
    case 403:
    case 407:
      return `${host} refuses ${what} (${status}): it wants a login, or has shut out this network for a while. Try again in an hour, or name another server.`;
    case 429:
      return `${host} asks not to be asked so often (429). Try again later.`;
    default:
      return status >= 500
        ? `${host} cannot give ${what} now (${status}). Try again later.`
        : `${host} answered oddly to a question for ${what} (${status}). Look at the server's address.`;
  }
}
