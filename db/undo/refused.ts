/** Thrown inside the one writing of a taking back, so that nothing of it stays. The message is for the person. */
export class Refused extends Error {}

/** Thrown likewise where the person must say first what to do about entries that were changed again since. */
export class AskFirst extends Error {}
