/**
 * Nodes of one way and members of one relation: OpenStreetMap itself takes 2,000 and 32,000
 * (https://wiki.openstreetmap.org/wiki/API_v0.6/capabilities, from memory), and joined or older data some times that.
 * Far more is no road, and every one costs memory in all that follows.
 */
export const MOST_PARTS = 500_000;
