import { turningRule } from './turning.ts';

/** Corners where room is the matter: the other lane on the exit, the whole road, or a shunt. */
export const turn = turningRule('turn');
