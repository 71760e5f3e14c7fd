import filenamify from 'filenamify';

/** The longest name of a file, without its ending: every system takes 255 bytes, and a letter may need four. */
const LONGEST = 60;

/** A text cut between signs as a reader sees them, an emoji of several parts kept whole. */
const cut = (text: string): string => {
	let kept = '';
	for (const { segment } of new Intl.Segmenter().segment(text)) {
		if (kept.length + segment.length > LONGEST) break;
		kept += segment;
	}
	return kept;
};

/** A name that any system takes for a file: reserved signs and names replaced, cut to length; `pattern` where nothing is left. */
export const fileName = (name: string): string => {
	// A name is cut before it is made safe, because the cut may leave a reserved one.
	const short = cut(
		name
			.normalize('NFC')
			.replace(/\p{Cc}/gu, ' ')
			.replace(/\p{Cs}/gu, '')
			.trim()
	);
	const safe = filenamify(short, { replacement: '-' })
		.trim()
		.replace(/^[.-]+/, '');
	return /[\p{L}\p{N}\p{Extended_Pictographic}]/u.test(safe) ? safe : 'pattern';
};

/** Names for files in one folder: each safe, and none like another even where capitals do not count. */
export const fileNames = (names: readonly string[]): readonly string[] => {
	const taken = new Set<string>();
	return names.map((each) => {
		const safe = fileName(each);
		let free = safe;
		for (let n = 2; taken.has(free.toLowerCase()); n++) free = `${safe}-${n}`;
		taken.add(free.toLowerCase());
		return free;
	});
};
