/** Threads that work at one import: each costs memory of its own, and the disk is shared. */
export const MOST_WORKERS = 2;
