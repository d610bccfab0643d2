/**
 * What three says to the console, but for one sentence: fiber 9.8 makes its store with three's Clock, which three 0.187
 * calls deprecated each time; nothing here can use another. Gone once fiber takes three's Timer.
 */
import { setConsoleFunction } from 'three';

const KNOWN = 'THREE.Clock: This module has been deprecated. Please use THREE.Timer instead.';

setConsoleFunction((type, message, ...more) => {
  if (message !== KNOWN) console[type](message, ...more);
});
