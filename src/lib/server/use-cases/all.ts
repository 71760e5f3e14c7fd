import * as assignments from './assignments.ts';
import * as beginning from './beginning.ts';
import * as changing from './changing.ts';
import * as choosing from './choosing.ts';
import * as classes from './classes.ts';
import * as comingAgain from './coming-again.ts';
import * as entering from './entering.ts';
import * as exams from './exams.ts';
import * as gradebook from './gradebook.ts';
import * as launching from './launching.ts';
import * as handing from './handing.ts';
import * as learners from './learners.ts';
import * as planning from './planning.ts';
import * as platforms from './platforms.ts';
import * as remarking from './remarking.ts';
import * as remarks from './remarks.ts';
import * as teachers from './teachers.ts';
import * as teaching from './teaching.ts';

const { becomeTeacher, signIn, comeBack, join, signOut } = entering;
const { startClass, ownClasses, readClass, setJoining, removeClass, inviteTeacher } = classes;
const { renameLearner, resetPassphrase, removeLearner, exportLearner, ownPage } = learners;
const { readTeachers, addTeacher, takeClassFrom, exportTeacher, removeTeacher } = teachers;

const { addPlatform, allPlatforms, removePlatform } = platforms;
const { beginLaunch, launch, openLaunch } = launching;
const { ownKeys, sendChoice } = choosing;
const { classSendings, sendMarkAgain } = gradebook;
const { setAssignment, removeAssignment, classAssignments, readAssignment } = assignments;
const { changeAssignment, giveTime } = changing;
const { lessonPlan, classSheets } = planning;
const { comeAgain } = comingAgain;
const { endExam } = exams;
const { beginAnew } = beginning;
const { handIn, openAssignment, previewAssignment, ownAssignments } = handing;
const { classMissteps, readWork, classNow, readBoard } = teaching;
const { overrideMark, takeMarkBack, addComment, removeComment } = remarks;
const { previewRemarking, applyRemarking } = remarking;

/** Everything that anybody can do, by name: routes call these and nothing else. */
export const USE_CASES = {
	becomeTeacher,
	signIn,
	comeBack,
	join,
	signOut,
	startClass,
	ownClasses,
	readClass,
	setJoining,
	removeClass,
	inviteTeacher,
	renameLearner,
	resetPassphrase,
	removeLearner,
	exportLearner,
	ownPage,
	readTeachers,
	addTeacher,
	takeClassFrom,
	exportTeacher,
	removeTeacher,
	addPlatform,
	allPlatforms,
	removePlatform,
	beginLaunch,
	launch,
	openLaunch,
	ownKeys,
	sendChoice,
	classSendings,
	sendMarkAgain,
	setAssignment,
	removeAssignment,
	classAssignments,
	readAssignment,
	handIn,
	openAssignment,
	previewAssignment,
	ownAssignments,
	classMissteps,
	readWork,
	classNow,
	readBoard,
	overrideMark,
	takeMarkBack,
	addComment,
	removeComment,
	previewRemarking,
	applyRemarking,
	changeAssignment,
	giveTime,
	endExam,
	beginAnew,
	comeAgain,
	lessonPlan,
	classSheets
};
