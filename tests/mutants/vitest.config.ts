import { defineConfig, mergeConfig } from 'vitest/config';
import base from '../vitest.config.ts';
import { NearestFirst } from './nearest-first.ts';

/** What tells mutants apart: the tests that compute from values, with the same random cases each time. */
export default mergeConfig(
  base,
  defineConfig({
    test: {
      setupFiles: ['tests/mutants/fixed-seed.ts'],
      // A mutant is told by what fails, never by a machine that is busy.
      testTimeout: 300_000,
      bail: 1,
      // One after the other, so that the first that fails is the last that runs.
      maxWorkers: 1,
      sequence: { sequencer: NearestFirst },
      // What no fault was made in is not read anew for each.
      experimental: { fsModuleCache: true, fsModuleCachePath: 'modules-read' },
      exclude: [
        '**/node_modules/**',
        'tests/{faults,fuzz}/**',
        // These look at windows, hosts, processes and pictures.
        'tests/unit/{cli,digests,host,launcher,mutants,picture,reading-in,runner,services,soak}/**',
        // Most tests of reading look at whole photographs.
        'tests/unit/reading/!(flatten|no-chart|parted|shadow|symbols).test.ts',
        'tests/unit/renderer-{files,pictures,reading-in,recovery,session}/**',
        'tests/unit/*.test.ts',
        'tests/reference/{reading,pdf,svg,png}-*',
      ],
    },
  }),
);
