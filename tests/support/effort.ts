/** The processor time that a call takes, in milliseconds: how busy the machine is does not count. */
export const effortOf = (run: () => unknown): number => {
	const before = process.cpuUsage();
	run();
	const { user, system } = process.cpuUsage(before);
	return (user + system) / 1000;
};
