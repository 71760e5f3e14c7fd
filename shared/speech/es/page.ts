import type { page as english } from '../en/page.ts';

/** What is written into every page when it is made, since nothing can be fetched, or run, when it is to be read. */
export const page: typeof english = () => ({
	withoutScript:
		'Sin JavaScript puedes leer las lecciones y ver sus figuras, y los patrones de un cuerpo inventado. Para trazar en la hoja, practicar, usar tus propias medidas y guardar archivos hace falta: actívalo para esta página y vuelve a cargarla.',
	outOfReach:
		'El servidor de esta página no responde: no hay conexión o lo han detenido. Lo que ves aquí se puede leer, y lo que has trazado sigue guardado en este navegador; lo demás llegará cuando vuelva a responder.'
});
