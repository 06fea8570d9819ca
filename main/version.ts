/** Named in every report. */
export const PROGRAM = 'Lanegauge 0.1.0';
