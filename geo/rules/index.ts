import { access } from './access/access.ts';
import { barrier } from './access/barrier.ts';
import { ferry } from './access/ferry.ts';
import { zone } from './access/zone.ts';
import { swing } from './corners/swing.ts';
import { turn } from './corners/turn.ts';
import { axle } from './limits/axle.ts';
import { height } from './limits/height.ts';
import { length } from './limits/length.ts';
import { mass } from './limits/mass.ts';
import { width } from './limits/width.ts';
import { bridgeAbove } from './overhead/bridge-above.ts';
import { gateway } from './overhead/gateway.ts';
import { roofed } from './overhead/roofed.ts';
import { trees } from './overhead/trees.ts';
import { tunnel } from './overhead/tunnel.ts';
import { crossing } from './road/crossing.ts';
import { ground } from './road/ground.ts';
import { map } from './road/map.ts';
import { narrow } from './road/narrow.ts';
import { partOfYear } from './road/part-of-year.ts';
import { slope } from './road/slope.ts';
import { slopeBreak } from './road/slope-break.ts';
import { softPitch } from './road/soft-pitch.ts';
import { water } from './road/water.ts';
import type { SubjectRule } from './rule.ts';

/** Every rule the check asks. The list is the documentation. */
export const RULES: readonly SubjectRule[] = [
  height,
  bridgeAbove,
  gateway,
  roofed,
  width,
  length,
  mass,
  axle,
  access,
  barrier,
  ground,
  softPitch,
  partOfYear,
  water,
  slope,
  slopeBreak,
  narrow,
  trees,
  tunnel,
  crossing,
  turn,
  swing,
  zone,
  ferry,
  map,
];
