import type { command as english } from '../en/command.ts';

const CANNOT_READ: Readonly<Record<string, string>> = {
	ENOENT: 'este archivo no existe',
	EISDIR: 'esto es una carpeta, no un archivo',
	ENOTDIR: 'una parte de esta ruta no es una carpeta',
	EACCES: 'este usuario no puede leer el archivo',
	ENAMETOOLONG: 'este nombre es demasiado largo',
	ELOOP: 'estos enlaces dan vueltas en círculo',
	EINVAL: 'el sistema no puede leer esto',
	ERR_STRING_TOO_LONG: 'este archivo es demasiado grande',
	ERR_FS_FILE_TOO_LARGE: 'este archivo es demasiado grande',
	ERR_INVALID_ARG_VALUE: 'esto no es el nombre de un archivo'
};
const CANNOT_WRITE: Readonly<Record<string, string>> = {
	ENOENT: 'esta carpeta no existe',
	EISDIR: 'esto es una carpeta, no un archivo',
	ENOTDIR: 'una parte de esta ruta no es una carpeta',
	EEXIST: 'esto es un archivo, no una carpeta',
	EACCES: 'este usuario no puede escribir aquí',
	EPERM: 'este usuario no puede escribir aquí',
	EROFS: 'aquí no se puede escribir nada',
	ENOSPC: 'el disco está lleno',
	EDQUOT: 'el disco está lleno',
	EFBIG: 'el archivo sería mayor de lo que este usuario puede escribir',
	ELOOP: 'estos enlaces dan vueltas en círculo',
	ENAMETOOLONG: 'este nombre es demasiado largo',
	ERR_INVALID_ARG_VALUE: 'esto no es el nombre de un archivo'
};

export const command: typeof english = (_voice) => ({
	cannotRead: ({ code }) => CANNOT_READ[code] ?? `esto no se puede leer (${code})`,
	cannotWrite: ({ code }) => CANNOT_WRITE[code] ?? `aquí no se puede escribir nada (${code})`,
	// The engine's own words about JSON come in English alone; where in the text it stumbled is a number.
	notJson: ({ problem }) => {
		const position = /position (\d+)/.exec(problem)?.[1];
		return position === undefined ? 'esto no es JSON' : `esto no es JSON (posición ${position})`;
	}
});
