import { fail, type Problem } from '../../../../geo/result.ts';
import { clip } from '../../../../geo/units/text.ts';

/** What a server that will not answer means by its status. @param page what it sent along, for a person to read */
export function refusedSentence(host: string, status: number, page: string): Problem {
  const kept = 'What was fetched so far is kept.';
  switch (status) {
    case 400:
      return problemOf(
        'query',
        `${host} does not understand what it is asked (${reasonIn(page)}). ${kept} Use another server.`,
      );
    case 401:
      return problemOf(
        'sign-in',
        `${host} wants you to sign in (401), which this program cannot. Use another server.`,
      );
    case 403:
      return problemOf(
        'blocked',
        `${host} has closed its door to this computer or program (403), as a rule for a quarter to half an hour. ${kept} Try again later, or use another server.`,
      );
    case 406:
      return problemOf(
        'unwanted',
        `${host} does not take questions from this program (406). Asking again will not help. ${kept} Use another server.`,
      );
    case 404:
    case 405:
    case 410:
      return problemOf(
        'address',
        `${host} knows no such address (${status}). An Overpass server's ends in /api/interpreter; look at the setting.`,
      );
    default:
      return problemOf('refused', `${host} refuses to answer (${status}). ${kept} Use another server.`);
  }
}

/** A server tells what is wrong with a question on a page, after the word Error. */
function reasonIn(page: string): string {
  const said = /Error<\/strong>:\s*([^<]+)/u.exec(page)?.[1] ?? page.replaceAll(/<[^>]*>/gu, ' ');
  return clip(said.replaceAll(/\s+/gu, ' ').replaceAll('&quot;', '"'), 160) || 'without a reason';
}

function problemOf(code: string, message: string): Problem {
  return fail(`line.${code}`, message).error;
}
