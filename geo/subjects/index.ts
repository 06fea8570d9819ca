import { access } from './access.ts';
import { axle } from './axle.ts';
import { barrier } from './barrier.ts';
import { bridgeAbove } from './bridge-above.ts';
import { crossing } from './crossing.ts';
import { ferry } from './ferry.ts';
import { ground } from './ground.ts';
import { height } from './height.ts';
import { length } from './length.ts';
import { map } from './map.ts';
import { mass } from './mass.ts';
import { narrow } from './narrow.ts';
import { roofed } from './roofed.ts';
import type { SubjectRule } from './rule.ts';
import { slope } from './slope.ts';
import { swing } from './swing.ts';
import { trees } from './trees.ts';
import { tunnel } from './tunnel.ts';
import { turn } from './turn.ts';
import { water } from './water.ts';
import { width } from './width.ts';
import { zone } from './zone.ts';

/** Every subject the check asks. The list is the documentation. */
export const SUBJECTS_IN_ORDER: readonly SubjectRule[] = [
  height,
  bridgeAbove,
  roofed,
  width,
  length,
  mass,
  axle,
  access,
  barrier,
  ground,
  water,
  slope,
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
