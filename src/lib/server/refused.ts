import { message, type Message } from '#shared/speech/message.ts';

/** Why a use case is refused to somebody, with the status of HTTP that says so to a program. */
const STATUS = {
	/** Nobody is signed in. */
	signIn: 401,
	/** The other role may. */
	notForRole: 403,
	/** There is none, or it is somebody else's: who asks is not told which. */
	notThere: 404,
	/** No open class has this code: wrong and closed are one. */
	noOpenClass: 400,
	/** A name, a code and a passphrase do not belong together: which one is wrong is not told. */
	notTogether: 400,
	nameTaken: 409,
	/** No teacher of this site has the name. */
	noTeacher: 404,
	/** A class would be left without anybody who teaches it. */
	onlyTeacher: 409,
	linkUsed: 410,
	classFull: 409,
	/** No learning platform that is known asks so. */
	noPlatform: 400,
	/** What came is not what the platform signed for this way, or says too little: which is not told. */
	notFromPlatform: 401,
	/** The way from a platform was gone before, or took too long. */
	launchOver: 400,
	/** The browser that arrives from a platform is not the one that set out, or keeps nothing. */
	otherBrowser: 403,
	/** The platform wants something that is no link. */
	noLinks: 400,
	platformKnown: 409,
	/** The platform does not hand its keys out. */
	noPlatformKeys: 502,
	/** The learner's own body cannot be drafted for. */
	notDrafted: 400,
	/** Something came in between what was shown and what is asked for. */
	changedMeanwhile: 409,
	/** Somebody has handed in for it. */
	frozen: 409,
	/** It is done as practice, which has no end of its own. */
	noExam: 409,
	/** No other attempt may be begun: there is none left, it is over, or the last one has nothing in it. */
	noMore: 409,
	tooMany: 429
} as const;

export type Refusal = keyof typeof STATUS;

/** A refusal that the person who asks can understand; `slip` says it. */
export class Refused extends Error {
	readonly status: number;
	readonly slip: Message;

	constructor(readonly refusal: Refusal) {
		super(refusal);
		this.status = STATUS[refusal];
		this.slip = message('classroom', refusal);
	}
}
