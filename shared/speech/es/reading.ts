import type { reading as english } from '../en/reading.ts';

const near = (name: string | undefined): string => (name === undefined ? '' : ` (¿querías decir «${name}»?)`);

const ALLOWED =
	'números, + - * /, paréntesis, medidas, ajustes, distance(A, B), length(línea), greater(a, b), lesser(a, b), choice(sobre, sí, no) y pi';

const circle = (names: readonly string[], word: string): string => names.slice(0, 8).join(` ${word} `);

export const reading: typeof english = (_voice) => ({
	pointName: 'un punto se nombra con una letra mayúscula, seguida de un número si hace falta',
	lineName: 'una línea se nombra en minúsculas, como shoulder o armholeLevel',
	pieceName: 'aquí un nombre se escribe en minúsculas, como front o armhole',
	edgeName: 'un borde se nombra con su pieza, como front.side',
	takenName: 'este nombre significa otra cosa para el programa; elige otro',

	takenAllowance: 'este nombre ya es de otro ajuste o de una medida',
	inheritedAllowance: 'un método que este usa ya tiene este ajuste',
	twoSteps: 'otro paso ya tiene este nombre',
	twoEdges: ({ name }) => `dos bordes se llaman «${name}»`,
	levelsAndGirths: ({ levels, girths }) =>
		`hay ${levels} niveles para ${girths} contornos; cada nivel tiene uno`,
	noSource: ({ need, near: like }) => `sale de «${need}», que ningún paso traza${near(like)}`,
	stepsInCircle: ({ names }) => `estos pasos dan vueltas en círculo: ${circle(names, 'necesita')}`,
	methodsInCircle: ({ names }) => `estos métodos dan vueltas en círculo: ${circle(names, 'usa')}`,
	needsBound: 'una condición (need) dice atLeast, moreThan o atMost',
	noMethodUsed: (given) => `no se usa ningún método con este nombre${near(given.near)}`,
	noTraced: ({ method, name, near: like }) => `${method} no tiene «${name}»${near(like)}`,
	carriedKind: ({ of, name }) =>
		`${of} no puede pasar a ser ${name}: un punto sigue siendo un punto y una línea, una línea`,

	inFormula: ({ position, text, slip }) => `posición ${position} de «${text}»: ${slip}`,
	drawnNames: 'distance() y length() llevan nombres de puntos y de líneas, nada más',
	unknownFunction: ({ name }) => `«${name}» no se conoce; una fórmula puede llevar ${ALLOWED}`,
	takesNames: ({ name, wanted, count }) =>
		`${name}() lleva ${wanted} ${wanted === 1 ? 'nombre' : 'nombres'}, no ${count}`,
	lacksPart: ({ name }) => `a ${name}() le falta una parte`,
	dividesByNothing: 'divide entre cero',
	notAllowed: ({ sign }) => `«${sign}» no se admite; una fórmula puede llevar ${ALLOWED}`,
	cannotStand: `esto no puede estar en una fórmula, que puede llevar ${ALLOWED}`,
	oneSort: ({ name }) => `${name}() lleva fórmulas de una misma clase: longitudes o números solos`,
	plainNumber:
		'un número solo no se puede sumar a una longitud ni restar de ella; da nombre a un ajuste en su lugar',
	notFormula: () => `esto no es una fórmula; una fórmula puede llevar ${ALLOWED}`,
	notLength: 'esto no es una longitud',
	notShare: 'esto debe ser una fracción sola, como 1 / 2',
	tooLong: ({ most }) => `una fórmula puede tener ${most} signos`,
	notFinite: 'divide entre cero o da más de lo que mide cualquier trazado',

	fileTooLong: ({ most }) => `un archivo de esta clase puede tener ${most} kB`,
	tooDeep: ({ most }) => `esto está anidado a más de ${most} niveles`,
	tab: 'hay un tabulador donde debe haber espacios',
	twoDocuments: 'aquí empieza un segundo documento; el archivo puede tener uno',
	twice: ({ name }) => `«${name}» está aquí dos veces`,
	alias: 'aquí no se conocen las anclas ni los alias (& y *); escribe los valores',
	tag: 'aquí no se conocen las etiquetas (!)',
	notYaml: ({ code }) => `esto no es YAML (${code})`
});
