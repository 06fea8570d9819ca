/** How far the real vehicle may be off what is worked out: tyres slide, bodies have round corners. Metres; judgement. */
export const MODEL_OFF_M = 0.05;
