/** The day that it is here, as its midnight in universal time: files made on one day with the same numbers are the same. */
export const today = (now = new Date()): Date =>
	new Date(Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()));
