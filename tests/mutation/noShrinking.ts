import fc from 'fast-check';

/** That a mutant is killed is enough to know: no smallest example of it. */
fc.configureGlobal({ endOnFailure: true });
