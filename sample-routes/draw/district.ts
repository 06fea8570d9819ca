import { assemble } from './assemble.ts';
import { build } from './buildings.ts';
import { measureClearances } from './clearance.ts';
import type { District } from './elements.ts';
import { layFeatures } from './features.ts';
import { layGreenery, plantRows } from './greenery.ts';
import { Ground } from './ground.ts';
import { layLand } from './land.ts';
import { seededRandom } from './lines/random.ts';
import { Names } from './names.ts';
import { layOutskirts } from './outskirts.ts';
import { layRailway } from './railway.ts';
import { layRoads } from './roads.ts';
import { Sheet } from './sheet.ts';
import { laySites } from './sites.ts';
import { layTown } from './town.ts';
import { layTrunk } from './trunk.ts';
import { layVillages, nameSettlements, signSettlements } from './villages.ts';

/** Draws the whole invented district; the same every time. Each part has a seed of its own, so that one can change alone. */
function drawDistrict(): Sheet {
  const sheet = new Sheet();
  const ground = new Ground(sheet);
  const names = new Names(seededRandom(20));
  const site = (seed: number) => ({ sheet, ground, random: seededRandom(seed) });
  layLand(sheet, seededRandom(11));
  layRailway(sheet, seededRandom(12));
  layTrunk(sheet, seededRandom(13));
  layRoads(sheet, seededRandom(14));
  sheet.joinLooseEnds();
  layTown(site(16), names);
  laySites(site(15));
  layVillages(site(17), names);
  layOutskirts(site(18));
  signSettlements(site(19));
  measureClearances(sheet);
  layFeatures(sheet);
  build(site(21));
  layGreenery(site(22));
  plantRows(site(23));
  nameSettlements(site(24));
  return sheet;
}

export function makeDistrict(): District {
  return assemble(drawDistrict());
}
