import js from '@eslint/js';
import { defineConfig } from 'eslint/config';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import { uiFloors } from './.dependency-cruiser.mjs';
import svelteConfig from './svelte.config.js';

/** Size ceilings: a function fits on a screen, a file in the head. Blank lines and comments are free. */
const FUNCTION_LINES = 60;
const CORE_FILE_LINES = 400;
const COMPONENT_LINES = 300;

/** @param {number} max */
const atMost = (max) => ['error', { max, skipBlankLines: true, skipComments: true }];

/**
 * An import of a type leaves no trace in a compiled component, so dependency-cruiser cannot see it there.
 * This closes the gap for the two directions that components could go wrong in: to the server, and to a higher floor.
 */
const notForComponents = {
	regex: '^(#server|#cli|[$]lib)/|^[.]{1,2}/(.*/)?(server|cli|tests)/',
	message:
		'A component knows neither the class server nor the command line, not even their types. ' +
		'Move the type to shared/ and pass the value in as a prop.'
};

/** @param {readonly string[]} higher the floors of ui that a component must not know */
const notUpward = (higher) => ({
	regex: `^(#ui|([.][.]/)+)/?(${higher.join('|')})/`,
	message:
		'A component imports from its own floor of ui and those below, types as well. ' +
		'Move the type down to the floor that owns the idea.'
});

export default defineConfig(
	{
		ignores: [
			'build/',
			'data/',
			'.svelte-kit/',
			'node_modules/',
			'coverage/',
			'test-results/',
			'playwright-report/'
		]
	},
	{ linterOptions: { reportUnusedDisableDirectives: 'error' } },
	js.configs.recommended,
	{ languageOptions: { globals: { ...globals.browser, ...globals.node } } },
	// The rules that ask the compiler for types stand in .oxlintrc.json.
	{ files: ['**/*.ts', '**/*.svelte'], extends: [ts.configs.strict] },
	// After the TypeScript rules, whose parser cannot read a component: this puts Svelte's own in its place.
	...svelte.configs.recommended,
	{
		files: ['**/*.svelte', '**/*.svelte.ts'],
		languageOptions: { parserOptions: { parser: ts.parser, svelteConfig } },
		rules: {
			// Square Across has an address of its own, and links in Markdown could not call resolve().
			'svelte/no-navigation-without-resolve': 'off'
		}
	},
	{
		files: ['**/*.svelte.ts'],
		rules: {
			// In a module it complains of every Set and Map, also of those that live for one call.
			'svelte/prefer-svelte-reactivity': 'off'
		}
	},
	{
		files: ['**/*.ts', '**/*.svelte'],
		rules: {
			// TypeScript itself reports unknown names, and knows the types that this rule does not.
			'no-undef': 'off',
			'@typescript-eslint/no-explicit-any': 'error',
			'@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
			// `const { [id]: _, ...others } = all` is how a value is left out without changing it.
			'@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }]
		}
	},
	{
		files: ['**/*.svelte'],
		rules: {
			'max-lines': atMost(COMPONENT_LINES),
			'@typescript-eslint/no-restricted-imports': ['error', { patterns: [notForComponents] }]
		}
	},
	...Object.keys(uiFloors)
		.slice(0, -1)
		.map((floor, index, floors) => ({
			files: [`src/lib/ui/${floor}/**/*.svelte`],
			rules: {
				'@typescript-eslint/no-restricted-imports': [
					'error',
					{ patterns: [notForComponents, notUpward([...floors.slice(index + 1), 'pages'])] }
				]
			}
		})),
	{
		files: ['**/*.{js,mjs,ts}'],
		ignores: ['**/*.test.ts', 'tests/**/*.spec.ts'],
		rules: { 'max-lines': atMost(CORE_FILE_LINES) }
	},
	{
		// A catalogue is one list of sentences, made from a voice: its length says nothing of how hard it is to read.
		// A method worked a second time by hand is read from top to bottom beside its page, a line for each of its points.
		files: ['**/*.{js,mjs,ts,svelte}'],
		ignores: ['**/*.test.ts', 'tests/**/*.spec.ts', 'tests/reference/*.ts', 'shared/speech/{en,es}/*.ts'],
		rules: { 'max-lines-per-function': atMost(FUNCTION_LINES) }
	}
);
