/**
 * Who may import whom. Imports run one way: routes -> ui, server -> checker, exports -> garment ->
 * tape -> drafting, photograph -> geometry -> shared. `npm run layers` reads these rules, and
 * tests/architecture/layers.test.ts breaks each of them once to prove that it is seen.
 */

/** Layer folder -> what else it may import, and the words that a developer needs when it does not. */
const layers = {
	shared: {
		allowed: [],
		why:
			'Lessons, src and tests all read shared/, so it stands on nothing. ' +
			'Move what you need down into shared/, or pass it in as an argument.'
	},
	'src/lib/geometry': {
		allowed: ['shared/units', 'shared/tolerances'],
		why:
			'Geometry knows points and lengths, never bodies or drafts. ' +
			'Take plain points and Mm as arguments; keep what needs a body in src/lib/drafting/.'
	},
	'src/lib/photograph': {
		allowed: ['src/lib/geometry', 'shared'],
		why:
			'What a picture shows follows from its pixels and from what is printed on a sheet, whoever asks, in a worker too. ' +
			'Take greys and lines as arguments; reading files and showing pictures belong in src/lib/ui/.'
	},
	'src/lib/drafting': {
		allowed: ['src/lib/geometry', 'shared'],
		why:
			'A draft follows from a method and a body alone. ' +
			'Return data; marks belong in src/lib/checker/, files in src/lib/exports/, pictures in src/lib/ui/.'
	},
	'src/lib/tape': {
		allowed: ['src/lib/drafting', 'src/lib/geometry', 'shared'],
		why:
			'Where points lie follows from the draft and from what a tape reads between them. ' +
			'Return placements with their errors; verdicts belong in src/lib/checker/.'
	},
	'src/lib/garment': {
		allowed: ['src/lib/drafting', 'src/lib/geometry', 'shared'],
		why: 'Pieces are made from drafts. Return data; let src/lib/exports/ or src/lib/ui/ show it.'
	},
	'src/lib/checker': {
		allowed: ['src/lib/garment', 'src/lib/drafting', 'src/lib/geometry', 'shared'],
		why:
			'A verdict is data that any page or server can use. ' +
			'Return a verdict or a note; let src/lib/ui/ put it on the screen.'
	},
	'src/lib/practice': {
		allowed: ['src/lib/checker', 'src/lib/garment', 'src/lib/drafting', 'src/lib/geometry', 'shared'],
		why:
			'An exercise, its judgement and what a learner has mastered are data that any page can use. ' +
			'Return data; let src/lib/ui/ put it on the screen and save it.'
	},
	'src/lib/exports': {
		allowed: [
			'src/lib/photograph',
			'src/lib/tape',
			'src/lib/garment',
			'src/lib/drafting',
			'src/lib/geometry',
			'shared'
		],
		why: 'A file is written from pieces alone. Pass the piece or draft in; the caller decides where the file goes.'
	},
	'src/lib/course': {
		allowed: ['src/lib/garment', 'src/lib/drafting', 'src/lib/geometry', 'shared'],
		why:
			'A course is read from texts that are handed in. ' +
			'Let whoever asks find the files: routes by their bundler, the command line and tests from the disk.'
	},
	'src/lib/server': {
		allowed: [
			'src/lib/course',
			'src/lib/practice',
			'src/lib/exports',
			'src/lib/checker',
			'src/lib/garment',
			'src/lib/drafting',
			'src/lib/geometry',
			'shared'
		],
		why: 'The class server answers requests and draws nothing. Return data from a use case; the route hands it to a ui component.'
	},
	'src/lib/ui': {
		allowed: [
			'src/lib/practice',
			'src/lib/exports',
			'src/lib/photograph',
			'src/lib/tape',
			'src/lib/checker',
			'src/lib/garment',
			'src/lib/drafting',
			'src/lib/geometry',
			'shared'
		],
		why: 'A component gets what it shows from its route. Take it as a prop; load it in +page.ts or +page.server.ts.'
	},
	'src/cli': {
		allowed: [
			'src/lib/server',
			'src/lib/course',
			'src/lib/exports',
			'src/lib/checker',
			'src/lib/tape',
			'src/lib/garment',
			'src/lib/drafting',
			'src/lib/geometry',
			'shared'
		],
		why:
			'The command line runs the engine, and looks after the store of the class server, without a page. ' +
			'Move what both need into the layer below that owns the idea.'
	}
};

const LOCAL = '^(src|shared|lessons|tests)/';
const TEST = '[.]test[.]ts$';

/** @param {string} place a folder, or a file without its ending */
const at = (place) => `^${place}(/|[.]ts$)`;

/** The floors of src/lib/ui, from the ground up: each may import those below it. Floor -> why no other. */
export const uiFloors = {
	keeping:
		'What a learner has and keeps is the same on every page. ' +
		'Take what you need as an argument; what shows it stands on a floor above.',
	controls:
		'A field or a list of numbers serves every page. ' +
		'Take what it shows as a prop; keep what needs a drawing or a desk on its own floor.',
	drawing:
		'A drawing shows paths and names, whoever asks for it. ' +
		'Take paths and places as arguments; ink of pieces belongs in garments/, the marks of a learner in desk/.',
	files:
		'A file or a picture is made of what it is given. ' + 'Pass the job in from the page that offers it.',
	photographs:
		'A picture is taken, read and tapped alike, whatever is looked for in it. ' +
		'Hand it the places that are wanted; what they mean belongs to the page.',
	garments:
		'A garment is made and drawn alike in a lesson and on its pattern page. ' +
		'Keep what a page does with it in pages/pattern/.',
	desk:
		'The desk is where steps are drawn, in a lesson or an exercise, and knows neither. ' +
		'Take the work and the steps from the drafting that the page provides.',
	embeds:
		'A lesson of any page may embed these, so they know no page. ' +
		'Take what they need from the drafting or the garment that the page provides.',
	exercises:
		'An exercise is asked in a learner’s own practice and in one that a class was set, and knows neither. ' +
		'Take the exercise, and what is done with an answer, from the page.',
	pages: ''
};

/** @typedef {import('dependency-cruiser').IForbiddenRuleType} Rule */

/** @type {Rule[]} */
const layerRules = Object.entries(layers).map(([layer, { allowed, why }]) => ({
	name: `${layer.split('/').pop()}-imports-only-lower-layers`,
	comment: why,
	severity: 'error',
	from: { path: `^${layer}/`, pathNot: TEST },
	to: { path: LOCAL, pathNot: [layer, ...allowed].map(at) }
}));

/** @type {Rule[]} */
const meetingRules = [
	['checker', 'exports'],
	['exports', 'checker']
].map(([from, to]) => ({
	name: `${from}-never-reaches-${to}`,
	comment:
		'A mark must not depend on how a file is written, nor a file on a mark, not even through a third module. ' +
		'Put what both need into src/lib/garment/ or src/lib/drafting/.',
	severity: 'error',
	from: { path: `^src/lib/${from}/`, pathNot: TEST },
	to: { path: `^src/lib/${to}/`, reachable: true }
}));

/** @type {Rule[]} */
const floorRules = Object.entries(uiFloors)
	.slice(0, -1)
	.map(([floor, why], index, lower) => ({
		name: `ui-${floor}-imports-only-lower-floors`,
		comment: why,
		severity: 'error',
		from: { path: `^src/lib/ui/${floor}/` },
		to: {
			path: '^src/lib/ui/',
			pathNot: lower.slice(0, index + 1).map(([each]) => `^src/lib/ui/${each}/`)
		}
	}));

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
	forbidden: [
		...layerRules,
		...meetingRules,
		...floorRules,
		{
			name: 'a-page-imports-no-other-page',
			comment:
				'A page is changed without a look at the others, and loads nothing of theirs. ' +
				'Move what two of them show to the floor below that owns the idea.',
			severity: 'error',
			from: { path: '^src/lib/ui/pages/([^/]+)/' },
			to: { path: '^src/lib/ui/pages/', pathNot: '^src/lib/ui/pages/$1/' }
		},
		{
			name: 'no-circular',
			comment:
				'Two modules that need each other cannot be read or tested alone. ' +
				'Move the shared part into a third file, or pass it in as an argument.',
			severity: 'error',
			from: {},
			to: { circular: true }
		},
		{
			name: 'paper-only-in-the-kernel',
			comment:
				'paper keeps global state and adds 74 kB to a page, so one folder answers for it. ' +
				'Import the function you need from #geometry/kernel/, or add one there.',
			severity: 'error',
			from: { pathNot: '^src/lib/geometry/kernel/' },
			to: { path: 'node_modules/paper/' }
		},
		{
			name: 'the-browser-takes-zod-from-shape',
			comment:
				'The whole of zod is 16 kB more in every lesson than its small dialect. ' +
				"Write `import { z } from '#shared/shape.ts'` and the small spelling: z.optional(x), .check(z.minLength(1)).",
			severity: 'error',
			from: {
				path: '^src/lib/(ui|practice|checker|drafting|garment|exports|photograph|tape|geometry)/',
				pathNot: TEST
			},
			to: { path: 'node_modules/zod/' }
		},
		{
			name: 'core-knows-no-framework',
			comment:
				'The same engine runs in a page, on the server and at the command line, so it must not pull in Svelte, ' +
				'directly or through another module. Return plain data and wrap it in src/lib/ui/.',
			severity: 'error',
			from: {
				path: '^(shared|src/cli|src/lib/(geometry|photograph|tape|drafting|garment|checker|practice|exports))/',
				pathNot: TEST
			},
			to: { path: 'node_modules/(svelte|@sveltejs)/', reachable: true }
		},
		{
			name: 'only-server-files-reach-the-server',
			comment:
				'A browser must never be sent the class server. ' +
				'Call it in +page.server.ts, +server.ts or hooks.server.ts, and pass the result to the page as data.',
			severity: 'error',
			from: {
				path: '^src/',
				pathNot: ['^src/lib/server/', '^src/cli/', '[.]server[.]ts$', '/[+]server[.]ts$', TEST]
			},
			to: { path: '^src/lib/server/' }
		},
		{
			name: 'nothing-imports-the-command-line',
			comment:
				'The command line is a way in, not a library. ' +
				'Move the function that you need down into the layer that owns the idea.',
			severity: 'error',
			from: { path: '^(src|shared|lessons)/', pathNot: ['^src/cli/', TEST] },
			to: { path: '^src/cli/' }
		},
		{
			name: 'no-code-imports-tests',
			comment:
				'What ships must not need its tests. Move the helper out of tests/ into the layer that owns the idea.',
			severity: 'error',
			from: { path: '^(src|shared)/', pathNot: TEST },
			to: { path: ['^tests/', TEST] }
		},
		{
			name: 'no-development-packages-in-the-program',
			comment:
				'`npm ci --omit=dev && npm start` must work. ' +
				'Move the package to "dependencies" in package.json, or use it only in tests.',
			severity: 'error',
			from: { path: '^(src|shared)/', pathNot: TEST },
			to: { dependencyTypes: ['npm-dev'] }
		},
		{
			name: 'every-import-is-found',
			comment:
				'An import that cannot be found escapes all the other rules. Check the name, the .ts ending, ' +
				'and the "imports" of package.json; $app, $env and ./$types are made by SvelteKit and are left out here.',
			severity: 'error',
			from: {},
			to: { couldNotResolve: true, pathNot: ['^[$](app|env|service-worker)', '(^|/)[$]types([.]js)?$'] }
		}
	],
	options: {
		doNotFollow: { path: 'node_modules' },
		exclude: { path: '^(build|[.]svelte-kit|coverage|test-results)/' },
		// A type that is imported from a forbidden layer ties the two together as well.
		tsPreCompilationDeps: true,
		enhancedResolveOptions: {
			extensions: ['.ts', '.js', '.mjs', '.svelte', '.json'],
			exportsFields: ['exports'],
			conditionNames: ['import', 'svelte', 'node', 'default']
		}
	}
};
