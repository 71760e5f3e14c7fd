import { dayIn } from '../day.ts';
import type { classroom as english } from '../en/classroom.ts';

/** Lo que dicen las páginas de las clases de una escuela. */
export const classroom: typeof english = (v) => {
	const learners = (count: number): string => v.plural(count, { one: '1 alumno', other: `${count} alumnos` });
	return {
		heading: 'Tu clase',
		learnerTitle: 'Aprendo en una clase',
		learnerAbout: 'En la pizarra está el código de tu clase.',
		code: 'Código de la clase',
		name: 'Tu nombre',
		passphrase: 'Frase secreta',
		passphraseAbout: 'Una frase corta que solo sabes tú: al menos 8 letras.',
		join: 'Entrar por primera vez',
		comeBack: 'Volver a mi clase',
		teacherTitle: 'Doy clase',
		teacherAbout: 'Te invita otro docente con un enlace; quien arrancó este servidor recibió el primero.',
		signIn: 'Primero identifícate.',
		enter: 'Entrar',
		signOut: 'Salir',
		keptTitle: 'Qué se guarda de quien aprende',
		kept:
			'El nombre que usas en la clase, tu frase secreta como un número del que nadie puede leerla, cuándo entraste y lo ' +
			'que entregas. Ni correo electrónico ni edad. Tus medidas se quedan en este dispositivo, salvo que entregues un ' +
			'trabajo hecho con ellas. Si vienes de una plataforma de aprendizaje, también cómo te llama ella, para enviarle tus notas. Puedes verlo todo, y pedir que se borre, cuando quieras.',

		becomeTeacher: 'Empieza a dar clase aquí',
		comeAgain: 'Una frase secreta nueva',
		comeAgainAbout: ({ name }) =>
			`Este enlace vale una sola vez. Elige la frase secreta con la que tú, ${name}, entrarás desde ahora.`,
		becomeTeacherAbout: 'Este enlace vale una sola vez. Elige el nombre con el que entrarás.',

		hello: ({ name }) => `Hola, ${name}`,
		inClass: ({ name }) => `Estás en ${name}.`,
		yourData: 'Todo lo guardado, en un archivo',
		leave: 'Bórrame, con todo lo mío',
		reallyLeave: 'Sí, bórralo todo para siempre',

		yourClasses: 'Tus clases',
		noClassesYet: 'Aún no tienes ninguna clase. Empieza una y escribe su código en la pizarra.',
		newClass: 'Nombre de una clase nueva',
		begin: 'Empezar la clase',
		learners: ({ count }) => learners(count),
		invite: 'Invitar a otro docente',
		inviteAbout: 'Envía este enlace a una sola persona: con él podrá dar clase aquí. Vale una semana.',
		toClasses: 'Todas tus clases',
		openUntil: ({ day }) => `Quien sepa este código puede entrar hasta el ${day}.`,
		closed: 'No puede entrar nadie nuevo. Quien ya está en la clase vuelve con este código.',
		closeClass: 'Cerrar a nuevos alumnos',
		openClass: 'Abrir con un código nuevo',
		noLearners: 'Aún no ha entrado nadie.',
		joined: 'Entró',
		rename: 'Cambiar el nombre',
		newName: 'Nombre nuevo',
		newPassphrase: 'Frase secreta nueva',
		passphraseIs: ({ name, passphrase }) =>
			`La nueva frase secreta de ${name} es ${passphrase}. Solo se muestra esta vez.`,
		data: 'Todos los datos',
		remove: 'Borrar',
		more: ({ name }) => `Más sobre ${name}`,
		reallyRemove: ({ name }) => `Sí, borrar «${name}» y todo su trabajo para siempre`,
		teachers: 'Quiénes enseñan en esta clase',
		you: '(tú)',
		colleague: 'Nombre de tu colega',
		addTeacher: 'Añadir a esta clase',
		addTeacherAbout:
			'Quien ya enseña aquí puede llevar también esta clase, y podrá hacer entonces todo lo que puedes tú.',
		takeFrom: 'Quitarle la clase',
		giveUp: 'Dejar la clase',
		moreOf: 'Sobre ti',
		keptOfTeacher:
			'El nombre con el que entras, tu frase secreta como un número del que nadie puede sacarla, desde cuándo estás aquí, ' +
			'en qué clases enseñas y los enlaces para colegas que no se han usado.',
		reallyTake: ({ name }) => `Sí, quitársela a ${name}`,
		reallyGiveUp: 'Sí, dejarla',
		removeClass: 'Borrar esta clase',
		day: ({ at }) => dayIn(v.language, at),

		noClasses: 'En este sitio no hay clases.',
		outOfReach:
			'Ahora no se puede llegar a las clases. No se ha perdido nada de lo guardado; prueba dentro de un momento.',
		ourFault: ({ number }) =>
			`Algo ha fallado aquí, y no es culpa tuya. Quien cuida este sitio lo encuentra con el número ${number}.`,
		notForRole: 'Esto no te toca a ti.',
		notThere: 'Aquí no hay nada así.',
		noOpenClass: 'Ninguna clase en la que puedas entrar tiene este código. Pregunta a quien te da clase.',
		notTogether: 'El nombre, la frase secreta y el código no van juntos.',
		nameTaken: 'Alguien tiene ya este nombre aquí. Elige otro, o vuelve con tu frase secreta.',
		noTeacher:
			'Ningún docente tiene aquí este nombre. Invita antes a tu colega, con un enlace de la página de tus clases.',
		onlyTeacher: 'Nadie más enseña en una de tus clases. Añade antes a un colega, o borra la clase.',
		linkUsed: 'Este enlace ya se usó o es demasiado antiguo. Pide otro.',
		classFull: 'Esta clase está llena.',
		noPlatform: 'Este sitio no conoce la plataforma de la que vienes. Pregunta a quien te da clase.',
		notFromPlatform:
			'Tu plataforma no ha dicho quién eres como debe. Vuelve a ella y sigue otra vez el enlace.',
		launchOver:
			'Esta entrada ya se usó o tardó demasiado. Vuelve a tu plataforma y sigue otra vez el enlace.',
		otherBrowser:
			'Tu navegador no ha guardado lo que recibió al venir de tu plataforma. Permite las cookies de este sitio, vuelve a la plataforma ' +
			'y sigue otra vez el enlace.',
		noLinks: 'Tu plataforma pide algo que no es un enlace. Elige allí otra clase de actividad.',
		platformKnown: 'Esta plataforma ya está aquí.',
		noPlatformKeys: 'Ahora no se puede llegar a tu plataforma. Prueba dentro de un momento.',
		notDrafted:
			'Esto no se puede trazar con tus medidas: falta una que hace falta, o dos de ellas no concuerdan. Míralas en la ' +
			'página de medidas.',
		changedMeanwhile: 'Algo ha cambiado desde que se mostró. Mira otra vez y decide.',
		frozen:
			'Alguien ha entregado ya algo, así que queda como se pidió. Ponlo otra vez con otro nombre, como lo quieres ahora.',
		noMore:
			'Ahora no se puede empezar de nuevo: ha terminado, no quedan intentos o no has entregado nada en el último.',
		noExam: 'Esto no es un examen: todo se entrega según se traza.',
		tooMany: 'Demasiados intentos. Espera diez minutos.',
		otherSite: 'Esto se envió desde una página de otro sitio y no se ha hecho.',
		wrongField: {
			authorize: 'Una dirección empieza por https://.',
			keys: 'Una dirección empieza por https://.',
			name: 'Da un nombre de 60 letras como mucho.',
			passphrase: 'Una frase secreta tiene 8 letras o más.',
			mark: 'La nota de un paso está entre 0 y 1.',
			reason: 'Di por qué, con 500 letras como mucho.',
			text: 'Escribe algo, con 500 letras como mucho.',
			'task.practice.methods': 'Elige al menos un trazado para practicar.',
			'task.practice.kinds': 'Elige al menos un tipo de ejercicio que tengan los trazados elegidos.',
			'task.practice.count': 'Manda de 1 a 40 ejercicios.',
			'task.lessons': 'Elige al menos una lección.',
			minutes: 'Da minutos enteros, de 0 a 40320 (cuatro semanas).',
			steps: 'Nombra dos pasos de la única lección que elegiste, como están en la hoja: A y H.'
		},
		wrongForm: 'Este formulario no se ha rellenado como debe.'
	};
};
