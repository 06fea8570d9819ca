import { counted } from '../units/text.ts';

/**
 * That places where the vehicle stops were taken from the drive's file, which the person who checks it did not enter.
 * @param met how many of them the drive passes
 */
export function sayFileStops(inFile: number, met: number): string[] {
  if (inFile === 0) return [];
  const off = inFile - met;
  const left =
    off === 0
      ? ''
      : ` ${counted(off, 'stop')} of the file ${off === 1 ? 'does' : 'do'} not lie on the drive and ${off === 1 ? 'counts' : 'count'} for nothing.`;
  if (met === 0) return [left.trim()];
  return [
    `The drive’s file says that you stop at ${counted(met, 'place')} on the way: roads open only to those who go there are taken as open at ${met === 1 ? 'it' : 'them'}. If you do not stop there, they are closed to you.${left}`,
  ];
}

/** That the end of a drive that was laid out by this program cannot be left but by turning round. */
export function sayTurnAtEnd(): string {
  return 'At the end of the drive the vehicle has to turn round to leave again, as it was laid out: the road leads nowhere else, and no place to turn was mapped. How much room there is nothing tells. Ask, or look, before you drive in.';
}
