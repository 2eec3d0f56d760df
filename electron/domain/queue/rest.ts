/**
 * The least and the most minutes of rest between two tests that an organiser can set. With less than three, a result
 * says more about the test before it than about its own. Source: common practice, no published source.
 */
export const leastRestMinutes = 3;
export const mostRestMinutes = 60;
