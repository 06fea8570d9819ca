const WORDS: Readonly<Record<string, string>> = {
  mo: 'Monday',
  tu: 'Tuesday',
  we: 'Wednesday',
  th: 'Thursday',
  fr: 'Friday',
  sa: 'Saturday',
  su: 'Sunday',
  ph: 'public holidays',
  sh: 'school holidays',
  jan: 'January',
  feb: 'February',
  mar: 'March',
  apr: 'April',
  may: 'May',
  jun: 'June',
  jul: 'July',
  aug: 'August',
  sep: 'September',
  oct: 'October',
  nov: 'November',
  dec: 'December',
  off: 'not',
};

/**
 * Hours in plain words, from the opening_hours syntax: `Mo-Fr 07:00-17:00; PH off` is
 * "Monday to Friday 07:00 to 17:00; public holidays not". What is not known of the syntax stays as mapped.
 */
export function hoursText(hours: string): string {
  if (/^\s*24\/7\s*$/.test(hours)) return 'at all times';
  return hours
    .trim()
    .replace(/\s*;\s*/g, '; ')
    .replace(/\s*,\s*/g, ', ')
    .replace(/([\p{L}\d)\]])\s*-\s*(?=[\p{L}\d(])/gu, '$1 to ')
    .replace(/\b(\d)(?=:\d{2})/g, '0$1')
    .replace(/\b[A-Za-z]{2,3}\b/g, (word) => WORDS[word.toLowerCase()] ?? word)
    .replace(/(public|school) holidays not/g, 'not on $1 holidays')
    .replace(/\s+/g, ' ');
}
