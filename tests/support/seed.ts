/**
 * On CI the random tests draw the same examples every time, so that a change is judged by itself. Elsewhere each run
 * draws new ones: a counterexample found there is pinned in its test.
 */
import fc from 'fast-check';

const CI_SEED = 20261125;
if (process.env['CI'] !== undefined) fc.configureGlobal({ seed: CI_SEED });
