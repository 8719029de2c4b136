/**
 * The ending of a file that holds one job, without its dot. The system opens such a file with this program; pressing it only
 * shows what it holds.
 */
export const jobFileEnding = 'gate-job'
