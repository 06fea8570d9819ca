/** Of the gross mass on the front axle: the rule of a British builder's handbook (2008), for steering, grip and brakes. */
export const FRONT_SHARE_LEAST = 0.4;
export const FRONT_SHARE_MOST = 0.7;
