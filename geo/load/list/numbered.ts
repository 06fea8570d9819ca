/** The name of one of several alike: `E-bike 2`. */
export function numbered(stem: string, number: number): string {
  return `${stem} ${number}`;
}

/** What several alike are called together: the name without its number. */
export function stemOf(name: string): string {
  return name.replace(/ \d+$/, '');
}

/** Whether a name is that of one of several alike. */
export function isOneOf(name: string, stem: string): boolean {
  return name !== stem && stemOf(name) === stem;
}
