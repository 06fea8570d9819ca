/** A tag that is there and does not say no, whatever kind of yes it names. */
export function saysYes(text: string | undefined): boolean {
  return text !== undefined && text !== 'no' && text !== '';
}
