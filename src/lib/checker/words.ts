import type { Noun } from '#shared/speech/noun.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { UNSPOKEN } from '#shared/tolerances.ts';
import { mm } from '#shared/units.ts';
import type { Finding, Verdict } from '#shared/verdict.ts';

/** What a learner reads of a verdict: a headline, and a sentence for each thing that is not right. */
export interface VerdictWords {
	readonly headline: string;
	readonly sentences: readonly string[];
}

/** One finding as a sentence. */
const findingSentence = (finding: Finding, { words: { verdicts: say } }: Speech): string => {
	switch (finding.aspect) {
		case 'place':
		case 'start':
		case 'end':
			return 'turn' in finding && finding.turn ? say.turned(finding.turn) : say.place(finding);
		case 'direction':
			return say.direction(finding);
		case 'course':
			return say.course(finding);
		case 'length':
		case 'reach':
			return say[finding.aspect](finding);
	}
};

/** How near a right answer came, for a learner who likes to know. */
const nearness = (findings: readonly Finding[], { words: { verdicts: say } }: Speech): string => {
	const away = findings.map((finding) =>
		'offBy' in finding ? finding.offBy : 'away' in finding ? finding.away : 0
	);
	const worst = mm(Math.max(0, ...away));
	return worst < UNSPOKEN ? say.spotOn : say.within({ worst });
};

/** A verdict in the learner's words; *cannot-tell* needs those that are loaded later. `step` is what the step is called: A, or the shoulder. */
export const verdictWords = (verdict: Verdict, step: Noun, speech: Speech): VerdictWords => {
	const say = speech.words.verdicts;
	switch (verdict.answer) {
		case 'right':
			return {
				headline: say.right({ step, nearness: nearness(verdict.findings, speech) }),
				sentences: []
			};
		case 'wrong': {
			const failed = verdict.findings.filter(({ within }) => !within);
			return {
				headline: say.wrong({ step }),
				sentences: failed.map((each) => findingSentence(each, speech))
			};
		}
		case 'cannot-tell': {
			const failed = verdict.findings.filter(({ within }) => !within);
			const { measured } = speech.words;
			const near = measured.asMeasured({ nearness: nearness(verdict.findings, speech) });
			const as = failed.length > 0 ? failed.map((each) => findingSentence(each, speech)) : [near];
			return {
				headline: measured.cannotTell({ step }),
				sentences: [[...as, measured.again(verdict)].join(' ')]
			};
		}
		case 'unfinished':
			return { headline: say.unfinished({ step }), sentences: [] };
		case 'not-valid':
			return {
				headline: say.notValid,
				sentences: [say.because({ because: speech.tell(verdict.because) })]
			};
		case 'excused':
			return { headline: say.excused({ step }), sentences: [speech.tell(verdict.because)] };
		case 'our-fault':
			return { headline: say.ourFault, sentences: [speech.tell(verdict.because)] };
	}
};
