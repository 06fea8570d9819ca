import { assemble } from './assemble.ts';
import type { District } from './elements.ts';
import { Ground } from './ground.ts';
import { layLand } from './land.ts';
import { Names } from './names.ts';
import { layRailway } from './railway.ts';
import { seededRandom } from './random.ts';
import { layRoads } from './roads.ts';
import { Sheet } from './sheet.ts';
import { layTown } from './town.ts';
import { layTrunk } from './trunk.ts';

/** Draws the whole invented district; the same every time. */
export function drawDistrict(): Sheet {
  const sheet = new Sheet();
  layLand(sheet, seededRandom(11));
  layRailway(sheet, seededRandom(12));
  layTrunk(sheet, seededRandom(13));
  layRoads(sheet, seededRandom(14));
  const ground = new Ground(sheet);
  const names = new Names(seededRandom(20));
  layTown({ sheet, ground, random: seededRandom(15) }, names);
  return sheet;
}

export function makeDistrict(): District {
  return assemble(drawDistrict());
}
