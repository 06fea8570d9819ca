import { access } from './access.ts';
import { axle } from './axle.ts';
import { barrier } from './barrier.ts';
import { height } from './height.ts';
import { length } from './length.ts';
import { map } from './map.ts';
import { mass } from './mass.ts';
import type { SubjectRule } from './rule.ts';
import { width } from './width.ts';

/** Every subject the check asks. The list is the documentation. */
export const SUBJECTS_IN_ORDER: readonly SubjectRule[] = [
  height,
  width,
  length,
  mass,
  axle,
  access,
  barrier,
  map,
];
