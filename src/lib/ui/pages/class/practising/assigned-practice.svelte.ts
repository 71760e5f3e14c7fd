import type { ExerciseDone, Given } from '#shared/hand-in.ts';
import type { Tolerances } from '#shared/tolerances.ts';
import type { Exercise, ExerciseKey, Judged, Practised } from '#practice/exercises/exercise.ts';
import { exercise, judge } from '#practice/exercises/kinds.ts';

/** How one exercise stands with whoever does it. */
interface Standing {
	/** The last answer that could be read, as the class server will judge it. */
	readonly judged: Judged | undefined;
	/** What is told of what was pressed last: also that it cannot be read. */
	readonly told: Judged | undefined;
	/** Rungs of help that were opened. */
	readonly help: number;
}

const NOT_BEGUN: Standing = { judged: undefined, told: undefined, help: 0 };

/** How an exercise stands, as it may be told: in an exam whether it is answered, and nothing of whether that is right. */
export type Stands = 'right' | 'wrong' | 'missed' | 'kept' | 'begun' | 'new';

/** The exercises of an attempt: what was handed in before, and each answer and rung of help as it is handed in. */
export class AssignedPractice {
	#standings: Readonly<Record<number, Standing>> = $state.raw({});
	readonly #made = new Map<number, Exercise>();

	constructor(
		readonly keys: readonly ExerciseKey[],
		readonly methods: readonly Practised[],
		readonly mode: 'practice' | 'exam',
		/** How near a place must be. */
		readonly allowed: Tolerances,
		/** Called with what was done at an exercise. */
		readonly ondone: (done: Pick<ExerciseDone, 'exercise' | 'given' | 'help'>) => void
	) {}

	/** An exercise by its number, from 1; undefined where there is none. */
	exercise(number: number): Exercise | undefined {
		const key = this.keys[number - 1];
		const known = this.#made.get(number);
		if (known || !key) return known;
		const made = exercise(key, (id) => this.methods.find((method) => method.id === id));
		this.#made.set(number, made);
		return made;
	}

	of(number: number): Standing {
		return this.#standings[number] ?? NOT_BEGUN;
	}

	#set(number: number, standing: Standing): void {
		this.#standings = { ...this.#standings, [number]: standing };
	}

	/** Takes up what was handed in before, or waits to be. */
	begin(before: readonly ExerciseDone[]): void {
		for (const { exercise: number, given, help } of before) {
			const asked = this.exercise(number);
			const known = this.of(number);
			if (!asked || this.isOver(number)) continue;
			const judged = given?.kind === asked.kind ? judge(asked, given.answer, this.allowed) : known.judged;
			this.#set(number, { judged, told: judged, help: Math.max(help, known.help) });
		}
	}

	/** Whether nothing more can change how it stands: in practice what is right stays. */
	isOver(number: number): boolean {
		return this.mode === 'practice' && this.of(number).judged?.answer === 'right';
	}

	/** Judges an answer as the class server will, and hands it in. What cannot be read is told, and not handed in. */
	answer(number: number, value: unknown): void {
		const asked = this.exercise(number);
		if (!asked || this.isOver(number)) return;
		const told = judge(asked, value, this.allowed);
		const { judged, help } = this.of(number);
		const isReadable = value !== undefined && told.answer !== 'not-valid';
		this.#set(number, { judged: isReadable ? told : judged, told, help });
		if (!isReadable) return;
		this.ondone({ exercise: number, given: { kind: asked.kind, answer: value } as Given, help });
	}

	/** Opens a rung of help. */
	help(number: number): void {
		if (this.isOver(number)) return;
		const before = this.of(number);
		const opened = Math.min(before.help + 1, 3);
		this.#set(number, { ...before, help: opened });
		this.ondone({ exercise: number, help: opened });
	}

	/** @param isOn whether an exam is on, of which nothing may be told */
	stands(number: number, isOn: boolean): Stands {
		const { judged, help } = this.of(number);
		if (!judged) return help > 0 ? 'begun' : 'new';
		if (isOn) return 'kept';
		if (judged.answer === 'wrong') return this.mode === 'exam' ? 'missed' : 'wrong';
		return judged.answer === 'right' ? 'right' : 'begun';
	}

	/** The first exercise after one that is open, beginning anew at the end; undefined where none is. */
	next(after: number, isOn: boolean): number | undefined {
		const numbers = this.keys.map((_, i) => ((after + i) % this.keys.length) + 1);
		return numbers.find((number) => !['right', 'kept'].includes(this.stands(number, isOn)));
	}
}
