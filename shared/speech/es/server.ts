import type { server as english } from '../en/server.ts';

type Counts = Readonly<Record<string, number>>;

const CANNOT_OPEN: Readonly<Record<string, string>> = {
	EACCES: 'este usuario no puede escribir aquí',
	EPERM: 'este usuario no puede escribir aquí',
	EROFS: 'aquí no se puede escribir nada',
	ENOSPC: 'el disco está lleno',
	EEXIST: 'es un archivo, no una carpeta',
	ENOTDIR: 'una parte de esta ruta no es una carpeta',
	SQLITE_CANTOPEN: 'este usuario no puede escribir aquí',
	SQLITE_NOTADB: 'el archivo de las clases no es una base de datos',
	SQLITE_CORRUPT: 'el archivo de las clases está dañado; recupera una copia',
	ECONNREFUSED: 'allí no responde ningún servidor de bases de datos',
	ENOTFOUND: 'no hay ninguna máquina con este nombre',
	ETIMEDOUT: 'el servidor de bases de datos no responde',
	'28P01': 'el usuario o la contraseña no son correctos',
	'3D000': 'no hay ninguna base de datos con este nombre'
};

/** Lo que dice el servidor de clases a quien lo cuida. */
export const server: typeof english = (v) => {
	const rows = (count: number): string => v.plural(count, { one: '1 fila', other: `${count} filas` });
	const byTable = (counts: Counts): string =>
		Object.entries(counts)
			.map(([table, count]) => `${table} ${count}`)
			.join(', ');
	return {
		notPostgres: ({ seen }) =>
			`la dirección de una base de datos es postgres://USUARIO:CONTRASEÑA@MÁQUINA/NOMBRE, no ${seen}`,
		noSetting: ({ near }) =>
			`no hay ningún ajuste con este nombre${near === undefined ? '' : `; ¿quieres decir ${near}?`}`,
		notWhole: ({ least, most, seen }) => `debe ser un número entero de ${least} a ${most}, no ${seen}`,
		notOrigin: ({ seen }) =>
			`una dirección es aquí https://MÁQUINA o http://MÁQUINA:PUERTO sin ruta, no ${seen}`,
		notHeader: ({ seen }) => `debe ser el nombre de una cabecera, no ${seen}`,
		notBytes: ({ seen }) => `debe ser un número de bytes como 512K o 2M, no ${seen}`,
		notOneOf: ({ known, seen }) => `debe ser uno de ${known.join(', ')}, no ${seen}`,
		tooLong: ({ most, length }) => `Una petición puede enviar ${most} bytes, no ${length}.`,
		cannotOpen: ({ code }) => CANNOT_OPEN[code] ?? `aquí no se pueden abrir las clases (${code})`,
		newerStore: ({ has, knows }) =>
			`un programa más nuevo ha usado estas clases (paso ${has} de su esquema; este programa conoce ${knows}); arranca aquel`,
		notEmpty: ({ rows: count }) => `aquí ya hay algo guardado (${rows(count)}); elige un sitio vacío`,
		notTheSame: ({ had, has }) =>
			`lo escrito no es lo que se leyó, así que no se ha guardado nada: ${byTable(had)}, y después ${byTable(has)}`,
		notBackup: ({ line }) => `la línea ${line} no es de una copia de seguridad`,
		cutShort: ({ line }) =>
			`la copia termina tras la línea ${line}, antes de la última; no se ha recuperado nada`,
		otherVersion: ({ has, backup }) =>
			`la copia es del paso ${backup} del esquema y aquí se está en el ${has}; recupérala en un sitio nuevo`,
		withoutClasses: ({ because }) => `${because}. El sitio se sirve sin clases.`,
		firstTeacher: ({ address }) =>
			`Aún no hay docentes. Este enlace sirve, una vez, para el primero: ${address}`,
		noStore: 'SQUARE_ACROSS_DATA es none, así que no hay clases',
		backedUp: ({ to, counts }) => `${to}: ${byTable(counts)}`,
		restored: ({ to, counts }) => `Recuperado en ${to}: ${byTable(counts)}`,
		moved: ({ from, to, counts }) =>
			`Trasladado de ${from} a ${to} y leído de nuevo: ${byTable(counts)}. Pon DATABASE_URL para servir desde allí.`,
		giveTeacher: 'di quién es: square-across let-in NOMBRE',
		noSuchTeacher: ({ seen }) => `no hay ningún docente que se llame «${seen}»`,
		letIn: ({ address }) =>
			`Con este enlace, en la dirección del sitio, el docente elige una frase secreta nueva, una vez, en una semana: ${address}`,
		giveFile: ({ command }) => `di el archivo: square-across ${command} ARCHIVO`,
		giveDatabase: 'di la base de datos: square-across move --to postgres://USUARIO:CONTRASEÑA@MÁQUINA/NOMBRE'
	};
};
