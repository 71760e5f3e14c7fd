import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { ComponentProps } from 'svelte';
import ts from 'typescript';
import { describe, expect, expectTypeOf, it } from 'vitest';
import type { MeasurementKey } from '#shared/measurements.ts';
import type Tape from '#ui/embeds/Tape.svelte';
import { PROJECT } from './tree-copy.ts';

const SCRIPT = /<script lang="ts"[^>]*>([^]*?)<\/script>/;

const namesOf = (members: ts.NodeArray<ts.TypeElement>): string[] =>
	members.flatMap(({ name }) => (name && ts.isIdentifier(name) ? [name.text] : []));

/** The names that a component's type of its props declares; the type is written in place or in the same script. */
const declaredProps = (type: ts.TypeNode | undefined, source: ts.SourceFile): string[] => {
	if (type && ts.isTypeLiteralNode(type)) return namesOf(type.members);
	const named = type?.getText(source);
	const found = source.statements.find(
		(statement) => ts.isInterfaceDeclaration(statement) && statement.name.text === named
	);
	return found && ts.isInterfaceDeclaration(found) ? namesOf(found.members) : [];
};

/** Props that a component asks its callers for, and never takes. */
const propsNotTaken = (component: string): string[] => {
	const source = ts.createSourceFile('c.ts', SCRIPT.exec(component)?.[1] ?? '', ts.ScriptTarget.Latest, true);
	return source.statements
		.filter(ts.isVariableStatement)
		.flatMap(({ declarationList }) => [...declarationList.declarations])
		.filter(({ initializer }) => initializer?.getText(source) === '$props()')
		.flatMap(({ name, type }) => {
			if (!ts.isObjectBindingPattern(name) || name.elements.some(({ dotDotDotToken }) => dotDotDotToken))
				return [];
			const taken = name.elements.map((element) => (element.propertyName ?? element.name).getText(source));
			return declaredProps(type, source).filter((prop) => !taken.includes(prop));
		});
};

describe('a component takes every prop that it declares', () => {
	it.each([
		['interface Props { used: number; never?: string }\nconst { used }: Props = $props();', ['never']],
		['const { used }: { used: number; never: string } = $props();', ['never']],
		['interface Props { used: number }\nlet { used: known = 1 }: Props = $props();', []],
		['interface Props { used: number; more: number }\nconst { used, ...rest }: Props = $props();', []]
	])('is seen in %j', (script, expected) => {
		expect(propsNotTaken(`<script lang="ts">\n${script}\n</script>`)).toEqual(expected);
	});

	it('holds for all components', () => {
		const source = path.join(PROJECT, 'src');
		const components = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter((file) =>
			file.endsWith('.svelte')
		);
		expect(components.length).toBeGreaterThan(80);
		const left = components.flatMap((file) =>
			propsNotTaken(readFileSync(path.join(source, file), 'utf8')).map((prop) => `${file}: ${prop}`)
		);
		expect(left).toEqual([]);
	});
});

it('what a component is given is looked at by the compiler, from other folders too', () => {
	expectTypeOf<ComponentProps<typeof Tape>>().toEqualTypeOf<{ of: MeasurementKey }>();
});
