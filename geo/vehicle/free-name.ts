import { CARD_NAME_LONGEST } from './bounds.ts';

/** Whether two things have one name for whoever reads it: case and blanks tell nobody apart. */
export function isSameName(a: string, b: string): boolean {
  return plainName(a) === plainName(b);
}

/** The same of every name that reads the same. */
export function plainName(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLocaleLowerCase('en');
}

/** The name itself where no other vehicle has it, else with the first number that is free: `Coach-built 7.4 (2)`. */
export function freeName(name: string, taken: readonly string[]): string {
  const isTaken = (each: string) => taken.some((other) => isSameName(other, each));
  if (!isTaken(name)) return name;
  for (let number = 2; ; number++) {
    const ending = ` (${number})`;
    const tried = `${name.slice(0, CARD_NAME_LONGEST - ending.length)}${ending}`;
    if (!isTaken(tried)) return tried;
  }
}
