import { defineConfig } from 'eslint/config'
import prettier from 'eslint-config-prettier'
import vue from 'eslint-plugin-vue'
import tseslint from 'typescript-eslint'

/** A module's own variable lives as long as the program. In a component's script each component has its own. */
const lastingVariables = [
  { selector: 'Program > VariableDeclaration[kind="let"]', message: 'No module-level let.' },
  {
    selector: 'Program > ExportNamedDeclaration > VariableDeclaration[kind="let"]',
    message: 'No module-level let.',
  },
]

/** What the house style forbids and a rule can see. */
const forbidden = [
  { selector: 'TSAsExpression > TSAsExpression > TSUnknownKeyword', message: 'No "as unknown as".' },
  { selector: 'ExportDefaultDeclaration', message: 'Named exports only.' },
]

export default defineConfig(
  { ignores: ['build/out/**', 'node_modules/**', 'coverage/**', 'test-results/**'] },
  { linterOptions: { noInlineConfig: true } },
  ...tseslint.configs.recommended,
  ...vue.configs['flat/recommended'],
  {
    files: ['**/*.{ts,vue}'],
    languageOptions: {
      parserOptions: {
        parser: tseslint.parser,
        projectService: true,
        tsconfigRootDir: new URL('..', import.meta.url).pathname,
        extraFileExtensions: ['.vue'],
      },
    },
    rules: {
      'no-restricted-syntax': ['error', ...forbidden],
      'max-lines': ['error', { max: 300, skipBlankLines: true, skipComments: true }],
      'no-console': 'error',
      eqeqeq: 'error',
      'no-undef': 'off',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true },
      ],
      '@typescript-eslint/consistent-type-imports': ['error', { disallowTypeAnnotations: false }],
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/no-empty-object-type': 'error',
      'vue/multi-word-component-names': 'off',
      'vue/no-v-html': 'error',
      'vue/block-lang': ['error', { script: { lang: 'ts' } }],
      'vue/component-api-style': ['error', ['script-setup']],
    },
  },
  {
    files: ['**/*.ts'],
    rules: { 'no-restricted-syntax': ['error', ...forbidden, ...lastingVariables] },
  },
  {
    files: ['shared/**/*.ts', 'db/**/*.ts', 'electron/**/*.ts', 'renderer/**/*.ts', 'build/**/*.ts'],
    rules: {
      'max-lines-per-function': ['error', { max: 40, skipBlankLines: true, skipComments: true }],
      'max-params': ['error', { max: 3 }],
    },
  },
  {
    // A store is one function that holds its state and its actions together.
    files: ['renderer/stores/*.ts'],
    rules: { 'max-lines-per-function': 'off' },
  },
  {
    files: ['**/*.config.{ts,mjs}', '**/*.d.ts'],
    rules: { 'no-restricted-syntax': 'off' },
  },
  prettier,
)
