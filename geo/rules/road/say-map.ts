import { lengthIn, type Units } from '../../units/in-units.ts';
import type { Words } from '../words.ts';

/** What the map cannot vouch for, in words. */

export const NOTHING_ON_THE_MAP: Words = {
  say: 'No part of the route could be laid on mapped roads.',
  advice: 'Use a map that covers the drive.',
};

/** @param note on what the map lacks, from whoever read it */
export function sayIncomplete(note: string): Words {
  return {
    say: `The map may lack roads or limits: ${note}`,
    advice:
      'Get the map right before relying on this: under Shelf, or with lanegauge shelf verify --repair, mend what is damaged; renew what is old.',
  };
}

/** @param map whether it has roads at all */
export function sayOffTheMap(lengthM: number, map: 'has roads' | 'has none', units: Units): Words {
  const length = lengthIn(units, lengthM);
  return map === 'has none'
    ? {
        say: `The map has no roads here: ${length} of the route are not checked.`,
        advice: 'Use a map that covers the drive.',
      }
    : {
        say: `${length} with no mapped road under the route: not checked.`,
        advice:
          'Look at this part yourself. Where the map ends, use one that covers it; where the route is drawn beside the road, mend the route.',
      };
}

/** @param straightM to where the file goes on */
export function sayGap(straightM: number, units: Units): Words {
  return {
    say: `The file breaks off here; the next piece begins ${lengthIn(units, straightM)} away. What lies between is not checked.`,
    advice: 'Plan the missing part, if it is to be driven.',
  };
}

const GUESS_ADVICE = 'Compare with the planned roads, or use a file with more points.';

export function sayGuessed(lengthM: number, units: Units): Words {
  return {
    say: `${lengthIn(units, lengthM)} filled in: the route's points are far apart, and another road may be meant.`,
    advice: GUESS_ADVICE,
  };
}

/** Many parts filled in, in one line. */
export function sayGuessedParts(lengthM: number, parts: number, units: Units): Words {
  return {
    say: `${lengthIn(units, lengthM)} in ${parts} parts filled in: the route's points are far apart, and other roads may be meant.`,
    advice: GUESS_ADVICE,
  };
}

/** @param oneway tag as mapped */
export function sayDoubtfulRoad(oneway: string): Words {
  return {
    say: `The drive seems to run against this one-way road (${oneway}), but another road fits the route about as well.`,
    advice: 'Check which road is meant.',
  };
}
