/** What each component of a calendar of due times may hold, once or not at all (RFC 5545). */
const PROPERTIES: Readonly<Record<string, readonly string[]>> = {
  VCALENDAR: ['VERSION', 'PRODID'],
  VEVENT: ['UID', 'DTSTAMP', 'DTSTART', 'SUMMARY', 'DESCRIPTION'],
  VALARM: ['ACTION', 'DESCRIPTION', 'TRIGGER'],
};
const LINE_OCTETS = 75;
/** A text: `\`, `;` and `,` are escaped, and nothing else is (3.3.11). */
const TEXT = /^(?:[^\\;,\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]|\\[\\;,nN])*$/u;
const TIME = /^\d{8}T\d{6}Z$/u;

/**
 * Reads a calendar by the letter of RFC 5545: CR LF, lines of 75 octets in whole characters, components closed in
 * order, only what is expected in each. @returns what is wrong; undefined for nothing
 */
export function icsFault(calendar: string, events: number): string | undefined {
  if (!calendar.endsWith('\r\n')) return 'its last line is not ended';
  const lines = calendar.slice(0, -2).split('\r\n');
  const long = lines.find((line) => Buffer.byteLength(line) > LINE_OCTETS);
  if (long !== undefined) return `a line of ${Buffer.byteLength(long)} octets`;
  const open: { readonly name: string; readonly held: Set<string> }[] = [];
  const uids = new Set<string>();
  for (const line of lines.join('\r\n').replaceAll('\r\n ', '').split('\r\n')) {
    const [, name = '', value = ''] = /^([A-Z-]+):(.*)$/su.exec(line) ?? [];
    if (name === 'BEGIN') open.push({ name: value, held: new Set() });
    else if (name === 'END') {
      if (open.pop()?.name !== value) return `END:${value} ends another`;
    } else {
      const { name: component = '', held } = open.at(-1) ?? {};
      if (!PROPERTIES[component]?.includes(name) || held?.has(name))
        return `${JSON.stringify(line.slice(0, 80))} in ${component}`;
      held?.add(name);
      if (name === 'UID') uids.add(value);
      if (/^DT/u.test(name) ? !TIME.test(value) : !TEXT.test(value))
        return `${name} is ${JSON.stringify(value.slice(0, 80))}`;
    }
  }
  if (open.length > 0) return `${open.at(-1)?.name} is not ended`;
  return uids.size === events ? undefined : `${uids.size} events for ${events}`;
}
