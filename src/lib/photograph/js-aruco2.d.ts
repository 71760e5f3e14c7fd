/** What of js-aruco2 is used: it comes without types, as one CommonJS module. */
declare module 'js-aruco2' {
	interface Corner {
		readonly x: number;
		readonly y: number;
	}
	interface Found {
		readonly id: number;
		readonly corners: readonly [Corner, Corner, Corner, Corner];
	}
	interface Detector {
		detectImage(width: number, height: number, rgba: Uint8ClampedArray): readonly Found[];
	}
	interface Dictionary {
		/** The cells of each marker, row by row, as a text of 0 and 1. */
		readonly codeList: readonly string[];
	}
	const module: {
		readonly AR: {
			readonly Detector: new (options: {
				readonly dictionaryName: string;
				readonly maxHammingDistance: number;
			}) => Detector;
			readonly Dictionary: new (name: string) => Dictionary;
		};
	};
	export default module;
}
