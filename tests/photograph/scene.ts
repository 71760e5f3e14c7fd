import { WORKSHEET_IDS, WORKSHEET_MARKER } from '#photograph/marker-places.ts';
import { whiteCells } from '#photograph/markers.ts';

/** A table with a sheet of paper on it, as it would be seen from right above: greys of squares of the same size. */
export interface Scene {
	/** Of the table, in millimetres; the sheet's upper left corner is its (0, 0). */
	readonly left: number;
	readonly top: number;
	readonly width: number;
	readonly height: number;
	readonly perMm: number;
	readonly dots: { readonly across: number; readonly down: number; readonly light: Uint8Array };
}

export interface Place {
	readonly x: number;
	readonly y: number;
}

/** A marker that lies on the table: its upper left corner, its side and how it is turned. */
export interface LaidMarker {
	readonly id: number;
	readonly x: number;
	readonly y: number;
	readonly side: number;
	readonly turn?: number;
}

export const SHEET = { width: 594, height: 841 } as const;
const [TABLE, PAPER, WHITE, INK, PENCIL] = [120, 215, 225, 30, 75];
const MODULES = 8;

/** Where a place of a laid marker lies on the table, in its own millimetres from its upper left corner. */
export const onTable = ({ x, y, turn = 0 }: LaidMarker, across: number, down: number): Place => ({
	x: x + across * Math.cos(turn) - down * Math.sin(turn),
	y: y + across * Math.sin(turn) + down * Math.cos(turn)
});

/** Four markers of 40 mm in the corners of the sheet, each turned a little as hands lay them, 12 mm from its edges. */
export const cornerMarkers = (
	side: number = WORKSHEET_MARKER,
	first = 8,
	turns: readonly number[] = [0, 0, 0, 0]
): readonly LaidMarker[] => {
	const [right, bottom] = [SHEET.width - 12 - side, SHEET.height - 12 - side];
	return [
		{ id: first, x: 12, y: 12, side, turn: turns[0] ?? 0 },
		{ id: first + 1, x: right, y: 12, side, turn: turns[1] ?? 0 },
		{ id: first + 2, x: 12, y: bottom, side, turn: turns[2] ?? 0 },
		{ id: first + 3, x: right, y: bottom, side, turn: turns[3] ?? 0 }
	];
};

/** How hands turn markers that they lay down. */
const TURNS = [0.05, -0.03, 0.04, 0.1, -0.06, 0.02, 0.08, -0.04];

/** Four markers in the corners of the sheet, six with those half way down its long sides, eight with those half way across. */
export const rimMarkers = (
	count: number,
	side: number = WORKSHEET_MARKER,
	ids: readonly number[] = [...WORKSHEET_IDS, 0, 1]
): readonly LaidMarker[] => {
	const xs = [12, (SHEET.width - side) / 2, SHEET.width - 12 - side];
	const ys = [12, (SHEET.height - side) / 2, SHEET.height - 12 - side];
	const places = [
		[0, 0],
		[2, 0],
		[0, 2],
		[2, 2],
		[0, 1],
		[2, 1],
		[1, 0],
		[1, 2]
	] as const;
	return places.slice(0, count).map(([x, y], i) => ({
		id: ids[i] ?? 0,
		x: xs[x] ?? 0,
		y: ys[y] ?? 0,
		side,
		turn: TURNS[i] ?? 0
	}));
};

const painter = (scene: Scene) => {
	const { light, across, down } = scene.dots;
	/** Darkens or lightens each dot about a place by what `grey` and how much of it says of the dot's middle. */
	return (
		box: readonly [left: number, top: number, right: number, bottom: number],
		paint: (x: number, y: number) => readonly [grey: number, share: number]
	): void => {
		const from = [
			Math.max(0, Math.floor((box[0] - scene.left) * scene.perMm)),
			Math.max(0, Math.floor((box[1] - scene.top) * scene.perMm))
		];
		const to = [
			Math.min(across, Math.ceil((box[2] - scene.left) * scene.perMm)),
			Math.min(down, Math.ceil((box[3] - scene.top) * scene.perMm))
		];
		for (let row = from[1] ?? 0; row < (to[1] ?? 0); row++)
			for (let column = from[0] ?? 0; column < (to[0] ?? 0); column++) {
				const [grey, share] = paint(
					scene.left + (column + 0.5) / scene.perMm,
					scene.top + (row + 0.5) / scene.perMm
				);
				if (share <= 0) continue;
				const i = row * across + column;
				light[i] = (light[i] ?? 0) * (1 - share) + grey * share;
			}
	};
};

/** How much of a dot lies on the side of an edge where the distance is positive. */
const covered = (distance: number, perMm: number): number => Math.min(1, Math.max(0, distance * perMm + 0.5));

const paintMarker = (scene: Scene, marker: LaidMarker): void => {
	const { side, turn = 0 } = marker;
	const cell = side / MODULES;
	const white = whiteCells(marker.id);
	const corners = [
		[-cell, -cell],
		[side + cell, -cell],
		[-cell, side + cell],
		[side + cell, side + cell]
	].map(([a = 0, b = 0]) => onTable(marker, a, b));
	const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
	const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
	const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
	/** How white the marker is at a place of its own: its quiet rim, its border and its cells. */
	const whiteAt = (a: number, b: number): number => {
		const inner = Math.min(a, b, side - a, side - b);
		if (inner < 0) return 1;
		return white[Math.floor(b / cell) - 1]?.[Math.floor(a / cell) - 1] ? 1 : 0;
	};
	const FINE = 4;
	const part = (i: number): number => ((i + 0.5) / FINE - 0.5) / scene.perMm;
	/** Whether all of a dot lies in one column, or row, of cells. */
	const isWithin = (a: number): boolean => Math.abs(a - Math.round(a / cell) * cell) > 1 / scene.perMm;
	painter(scene)(box, (x, y) => {
		const [dx, dy] = [x - marker.x, y - marker.y];
		const [a, b] = [dx * cos + dy * sin, dy * cos - dx * sin];
		if (Math.min(a, b, side - a, side - b) < -cell) return [0, 0];
		if (isWithin(a) && isWithin(b)) return [INK + (WHITE - INK) * whiteAt(a, b), 1];
		let sum = 0;
		for (let i = 0; i < FINE; i++) for (let j = 0; j < FINE; j++) sum += whiteAt(a + part(i), b + part(j));
		return [INK + (WHITE - INK) * (sum / FINE ** 2), 1];
	});
};

/** Draws a line of some width through places, as a pencil does. */
export const paintLine = (scene: Scene, places: readonly Place[], width = 0.5, grey = PENCIL): void => {
	const paint = painter(scene);
	for (const [i, to] of places.entries()) {
		const from = places[i - 1];
		if (!from) continue;
		const [dx, dy] = [to.x - from.x, to.y - from.y];
		const length = Math.hypot(dx, dy) || 1;
		const box = [
			Math.min(from.x, to.x) - width,
			Math.min(from.y, to.y) - width,
			Math.max(from.x, to.x) + width,
			Math.max(from.y, to.y) + width
		] as const;
		paint(box, (x, y) => {
			const along = Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / length ** 2));
			const distance = Math.hypot(x - from.x - along * dx, y - from.y - along * dy);
			return [grey, covered(width / 2 - distance, scene.perMm)];
		});
	}
};

/** A table with a sheet, markers and drawn lines. */
export const sceneOf = (
	markers: readonly LaidMarker[],
	lines: readonly (readonly Place[])[],
	{ around = 60, perMm = 8 }: { around?: number; perMm?: number } = {}
): Scene => {
	const [width, height] = [SHEET.width + 2 * around, SHEET.height + 2 * around];
	const [across, down] = [Math.round(width * perMm), Math.round(height * perMm)];
	const light = new Uint8Array(across * down).fill(TABLE);
	const scene = { left: -around, top: -around, width, height, perMm, dots: { across, down, light } };
	const edge = around * perMm;
	for (let row = edge; row < down - edge; row++)
		light.fill(PAPER, row * across + edge, (row + 1) * across - edge);
	for (const line of lines) paintLine(scene, line);
	for (const marker of markers) paintMarker(scene, marker);
	return scene;
};
