/** Bayesian adaptive testing: which test to make next, and what its outcome tells; knows nothing of boards. */
package bootmend.adaptive;
