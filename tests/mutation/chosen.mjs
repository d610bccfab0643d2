/**
 * A checker for Stryker that lets through the mutants named in the option `chosen` and no other, so that a sample can be run; the others count as
 * not compiled. Plain JavaScript, since Stryker's processes load it as it is.
 */
import { declareFactoryPlugin, PluginKind, tokens } from '@stryker-mutator/api/plugin';
import { keyOf } from './key.mjs';

create.inject = tokens('options');
function create(options) {
  const chosen = new Set(options.chosen);
  return {
    init: async () => {},
    group: async (mutants) => [mutants.map(({ id }) => id)],
    check: async (mutants) =>
      Object.fromEntries(
        mutants.map((mutant) => [
          mutant.id,
          chosen.has(keyOf(mutant)) ? { status: 'passed' } : { status: 'compileError', reason: 'not in the sample' },
        ]),
      ),
  };
}

export const strykerPlugins = [declareFactoryPlugin(PluginKind.Checker, 'chosen', create)];
