/** Why a note was put on no road when it was made. */
type Unplaced = 'no-map' | 'no-road';

const SAY: Readonly<Record<Unplaced, string>> = {
  'no-map':
    'No map at hand shows whether a road lies there. The note is kept: it counts on the road within 25 m of it, as soon as a drive takes that road.',
  'no-road':
    'No road of your maps lies within 25 m of it, so that it bears on no drive for now. The note is kept: look whether the place is right.',
};

/** What is said of a note that lies on no road that is known. */
export function sayUnplaced(why: Unplaced): string {
  return SAY[why];
}
