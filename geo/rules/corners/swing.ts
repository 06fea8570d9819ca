import { turningRule } from './turning.ts';

/** Corners made in the own lane, where the tail leaves it or crosses the kerb's line. */
export const swing = turningRule('swing');
