import type { MeasurementKey } from '#shared/measurements.ts';

/** The lesson that shows how each measurement is taken. */
const LESSONS: Readonly<Record<MeasurementKey, string>> = {
	bust: '21-bust',
	waist: '22-waist',
	hip: '23-hip',
	neck: '24-neck',
	shoulderWidth: '25-shoulder-width',
	backLength: '26-back-length',
	waistToHip: '27-waist-to-hip',
	frontLength: '28-front-length',
	bustHeight: '29-bust-height',
	bustSpan: '30-bust-span',
	shoulderLength: '31-the-shoulder',
	shoulderDrop: '31-the-shoulder',
	napeToWaist: '32-down-from-the-nape',
	acrossBack: '33-between-the-arms',
	acrossChest: '33-between-the-arms',
	scyeDepth: '32-down-from-the-nape',
	upperArm: '34-the-arm',
	armLength: '34-the-arm',
	wrist: '34-the-arm',
	upperBust: '35-girths-and-side',
	underBust: '35-girths-and-side',
	sideWaistToFloor: '35-girths-and-side'
};

/** The address of the figure that shows how a measurement is taken. */
export const measuringLesson = (key: MeasurementKey): string => `/lessons/${LESSONS[key]}#${key}`;
