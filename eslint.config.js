import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import tseslint from 'typescript-eslint';

/** What a layer may not import, and the sentence that says why. */
const layer = (...groups) => ({
  'no-restricted-imports': ['error', { patterns: [...groups, ZOD].map(([group, message]) => ({ group, message })) }],
});

const ZOD = [['zod', 'zod/*'], 'Take z from src-shared/schema, which sets it up before any schema is made.'];

const PURE = 'src-shared is pure: it computes from values, without files, windows or clocks.';

export default tseslint.config(
  { ignores: ['out/**', 'dist/**', 'screens/**', 'demo-output/**', 'node_modules/**', 'test-results/**'] },
  ...tseslint.configs.recommended,
  ...svelte.configs.recommended,
  {
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/no-non-null-assertion': 'error',
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true } }],
      eqeqeq: 'error',
      'no-console': 'error',
      // An interface gives a name to a type that is inferred.
      '@typescript-eslint/no-empty-object-type': ['error', { allowInterfaces: 'with-single-extends' }],
      ...layer(),
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { globals: globals.browser, parserOptions: { parser: tseslint.parser } },
    rules: { 'no-restricted-exports': 'off', 'svelte/no-navigation-without-resolve': 'off' },
  },
  {
    files: ['src-shared/**/*.ts'],
    rules: {
      ...layer(
        [['node:*', 'fs', 'path', 'electron', 'svelte', 'svelte/*', 'konva', 'konva/*'], PURE],
        [['@shared/*', '**/src-main/**', '**/src-renderer/**'], 'src-shared imports only itself, by relative paths.'],
      ),
      'no-restricted-globals': [
        'error',
        ...[
          'window',
          'document',
          'navigator',
          'process',
          'Buffer',
          'setTimeout',
          'setInterval',
          'fetch',
          'performance',
          'crypto',
          'globalThis',
        ].map((name) => ({ name, message: PURE })),
      ],
      'no-restricted-syntax': [
        'error',
        { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: PURE },
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: PURE },
        { object: 'Math', property: 'random', message: PURE },
      ],
    },
  },
  {
    // It judges the program, so it takes nothing from it, nor from tests that do.
    files: ['tests/reference/knitter/**/*.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              regex: '^(?!zod$|vitest$|\\./|\\.\\./[^./]+\\.ts$)',
              message: 'The simulated knitter shares nothing with the program: it imports only what lies beside it.',
            },
          ],
        },
      ],
      'no-restricted-syntax': [
        'error',
        { selector: 'ImportExpression', message: 'The simulated knitter loads nothing.' },
      ],
    },
  },
  {
    // What is told to a knitter is read back by nobody who knows how it was put into words.
    files: ['tests/reference/told/**/*.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              regex: '^(?!\\./|\\.\\./knitter/)',
              message: 'What is read back shares nothing with the program: only what lies beside it, and the knitter.',
            },
          ],
        },
      ],
      'no-restricted-syntax': ['error', { selector: 'ImportExpression', message: 'What is read back loads nothing.' }],
    },
  },
  { files: ['src-shared/schema/zod.ts'], rules: { 'no-restricted-imports': 'off' } },
  {
    files: ['src-main/**/*.ts'],
    languageOptions: { globals: globals.node },
    rules: layer([
      ['**/src-renderer/**', 'svelte', 'konva'],
      'src-main serves the renderer through host/ and never imports it.',
    ]),
  },
  {
    files: ['src-renderer/**/*.{ts,svelte}'],
    languageOptions: { globals: globals.browser },
    rules: layer([
      ['**/src-main/**', 'node:*', 'electron'],
      'src-renderer reaches the services only through the contract in src-shared/host.',
    ]),
  },
  {
    // Whoever has the host's port when something is fetched later gives what is fetched.
    files: ['src-renderer/**/*.{ts,svelte}'],
    rules: {
      'no-restricted-syntax': [
        'error',
        {
          selector: 'ImportExpression:not(CallExpression[callee.name="latePart"] ImportExpression)',
          message: 'Load it by latePart (ui/load-part.ts), which asks nobody but our host.',
        },
        {
          selector: 'NewExpression[callee.name="Worker"]',
          message: 'Import it with ?worker&inline: a worker script that is fetched has no integrity.',
        },
      ],
    },
  },
  {
    // Command lines and runners print; configuration files are read by their default export.
    files: ['src-main/cli/**', 'src-main/launcher/**', 'src-main/browser-host/**', 'tests/**', '*.config.{js,ts}'],
    rules: { 'no-console': 'off' },
  },
  {
    // Tests of the page wait for what a person can see, and read it only once it stands.
    files: ['tests/e2e/**/*.spec.ts'],
    ignores: ['tests/e2e/electron.spec.ts'],
    rules: {
      'no-restricted-syntax': [
        'error',
        {
          selector: "CallExpression[callee.property.name='waitForTimeout']",
          message: 'Wait for a state that a person can see, not for a time.',
        },
        {
          selector: "CallExpression[callee.property.name='boundingBox']",
          message: 'Places are read with restingBox (at-rest.ts): they may be on their way.',
        },
        {
          selector:
            "CallExpression[callee.name='expect'] > AwaitExpression.arguments :matches([callee.property.name=/^(shown|yarns|size)$/], [callee.name='picture'])",
          message: 'What is drawn comes with the next frame: poll it with expect.poll.',
        },
        {
          selector: "CallExpression[callee.property.name='waitForEvent'][arguments.0.value='filechooser']",
          message: 'A chooser is kept back only once the browser has heard so: use chooserAfter (app.ts).',
        },
        {
          selector:
            "ExpressionStatement[expression.argument.callee.name=/^(start|openOn)$/] ~ ExpressionStatement[expression.argument.callee.property.name='route']",
          message: 'What an open page sends at once goes past: use intercept (app.ts).',
        },
      ],
    },
  },
  { files: ['**/*.config.{js,ts}'], rules: { 'no-restricted-exports': 'off' } },
);
