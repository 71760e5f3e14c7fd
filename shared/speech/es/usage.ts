import type { USAGE as ENGLISH } from '../en/usage.ts';

export const USAGE: Readonly<Record<keyof typeof ENGLISH, string>> = {
	main: `Uso:
  square-across draft MÉTODO --body ARCHIVO.json [--json]   traza para un cuerpo según sus medidas (- lee la entrada estándar)
  square-across draft MÉTODO --bodies ARCHIVO.csv           traza una tabla de cuerpos: una línea de JSON por fila
  square-across pattern PRENDA --body ARCHIVO.json [--json]   todas las piezas de una prenda para un cuerpo, y cómo coinciden sus costuras
  square-across pattern PRENDA --bodies ARCHIVO.csv         lo mismo para una tabla de cuerpos: una línea de JSON por fila
  square-across export PRENDA --body ARCHIVO.json --to ARCHIVO   el patrón a tamaño real: .pdf, .svg, .dxf, .csv o .json; MÉTODO para un trazado
  square-across export PRENDA --bodies ARCHIVO.csv --to CARPETA   un archivo por cada fila de una tabla
  square-across draft|pattern|export ... --size 42       con una talla normalizada en lugar de --body; men:50, old:36
  square-across sizes --body ARCHIVO.json [--json]       qué talla normalizada se acerca más, en errores de medida
  square-across check MÉTODO --body ARCHIVO.json --placements ARCHIVO.json [--json]   comprueba un trabajo entregado
  square-across check MÉTODO --stdin                        lo mismo para muchas personas: una línea de JSON cada una
  square-across check MÉTODO --body ARCHIVO.json --tape ARCHIVO.csv [--json]   comprueba un trazado en papel por lo que lee la cinta entre sus puntos
  square-across serve [--port N] [--host H]                 sirve las lecciones en este equipo (las prepara si hace falta)
  square-across build                                       prepara las lecciones para servirlas
  square-across backup ARCHIVO | restore ARCHIVO | move --to URL   copia las clases de una escuela; lo explica \`backup --help\`
  square-across let-in NOMBRE                               un docente que perdió su frase secreta vuelve a entrar

MÉTODO es back-block u otro id de lessons/*/method.yaml; \`draft --help\` dice cómo se escribe un cuerpo.
PRENDA es course-dress u otro id de lessons/*/garment.yaml; \`pattern --help\` dice qué se puede elegir para ella.
Con --language en, todo se dice en inglés.
`,
	store: `Uso:
  square-across backup ARCHIVO            todo lo de las clases en un archivo; el servidor puede seguir en marcha
  square-across restore ARCHIVO           recupera una copia en una carpeta o base de datos vacía
  square-across move --to postgres://...  copia las clases a una base de datos PostgreSQL vacía, y compara
  square-across let-in NOMBRE             un enlace con el que un docente que perdió su frase secreta elige otra, una vez

Las clases están en la carpeta que nombra SQUARE_ACROSS_DATA (data, junto al programa, si no se dice),
o en la base de datos PostgreSQL que nombra DATABASE_URL.
`,
	draft: `Uso:
  square-across draft MÉTODO --body ARCHIVO.json [--json]   traza para un cuerpo; - lee la entrada estándar
  square-across draft MÉTODO --bodies ARCHIVO.csv           traza una tabla de cuerpos: una línea de JSON por fila
  square-across draft MÉTODO --body ARCHIVO.json --how-sure [--json]   cuánto puede moverse cada punto, porque una cinta se lee con duda

MÉTODO es back-block u otro id de lessons/*/method.yaml. Un cuerpo es {"name":"Heron","unit":"cm","bust":96,...},
con "allowances":{"bustEase":4} si quieres. Longitudes: 96, 96.5, "96,5", "37 3/4" (unidad cm, mm o in; cm si no se dice ninguna).
--reading-error bust=6 dice cuánto se desvía una lectura, en mm, como desviación típica: de una medida o de una clase de ellas
(lo habitual es largeGirth=9, smallGirth=4, length=5); se puede dar varias veces.
`,
	pattern: `Uso:
  square-across pattern PRENDA --body ARCHIVO.json [--json]   todas las piezas de una prenda para un cuerpo; - lee la entrada estándar
  square-across pattern PRENDA --bodies ARCHIVO.csv           para una tabla de cuerpos: una línea de JSON por fila

PRENDA es course-dress u otro id de lessons/*/garment.yaml. Un cuerpo se escribe como para draft, y puede elegir
"allowances":{"skirtLength":70,"seamAllowance":1.5} y, para algunos bordes, "edges":{"front.side":2,"skirt.hem":4}.
Una tabla puede tener ajustes como columnas. Sin --json las tablas están en cm; JSON está en mm.
`,
	export: `Uso:
  square-across export PRENDA --body ARCHIVO.json --to ARCHIVO   un patrón a tamaño real, como .pdf, .svg, .dxf, .csv o .json
  square-across export PRENDA --bodies ARCHIVO.csv --to CARPETA  un archivo por cada fila, con su nombre
  square-across export MÉTODO --body ARCHIVO.json --to ARCHIVO   lo mismo para un trazado, que no tiene .dxf
  square-across export PRENDA --sizes 38,40,42 [--body ARCHIVO.json] --to ARCHIVO   varias tallas en una hoja: .pdf, .svg, .dxf; .csv, cuánto crecen

  --as pdf|svg|dxf|csv|json   el tipo de archivo, si el nombre no lo dice (en una carpeta: pdf)
  --apart                     cada pieza en un archivo propio, en la carpeta --to (svg; también --as pdf o dxf)
  --paper a4|letter|a3|a0|roll-60|roll-90   de un pdf (a4)
  --pieces front,back         solo estas piezas
  --toile                     para una prenda de prueba: 2,5 cm por fuera de cada costura (body-block, sleeved-bodice)
  --scale full|half|quarter   de un pdf o svg, más pequeño para trabajar en clase (full)
  --date 2026-01-31           la fecha que lleva un pdf; con los mismos datos y la misma fecha salen los mismos bytes

El archivo de dibujo sigue las capas de ASTM D6673 (retirada), de memoria: no se promete que se ajuste a ella.
Si una fila de una tabla no se puede hacer, se dice en la salida de errores y las demás se hacen; el código de salida es entonces 2.
`,
	sizes: `Uso:
  square-across sizes --body ARCHIVO.json [--json]   qué talla de cada tabla se acerca más a un cuerpo; - lee la entrada estándar

La diferencia se cuenta en errores de medida: cuánto se desvía una lectura y, si el largo es estimado, cuánto difieren las personas de una talla.
Tablas: women (contornos de EN 13402-3, de memoria), men (ídem), old (una talla de un libro de 1911). --size 42 o men:50 traza con una.
`,
	check: `Uso:
  square-across check MÉTODO --body ARCHIVO.json --placements ARCHIVO.json [--policy ARCHIVO.json] [--json] [--marks ARCHIVO.pdf]
  square-across check MÉTODO --stdin [--body ARCHIVO.json] [--policy ARCHIVO.json]
  square-across check MÉTODO --body ARCHIVO.json --tape ARCHIVO.csv [--measured-with tape|rule] [--policy ARCHIVO.json] [--json] [--marks ARCHIVO.pdf]

Las colocaciones son {"A":[0,222],"N":{"typed":"37/6+1"},...}: lugares en mm, hacia fuera y hacia abajo, o lo que se escribió, en la unidad del cuerpo.
Lo medido tiene su propio error, el radio en mm que lo contiene en 95 de 100 casos: {"A":{"at":[0,222],"error":1},...}; puede no estar ni bien ni mal.
Los pasos de un trazado en que se apoya MÉTODO, si también se entregan, llevan su nombre corto: {"back.K":[190,0],...}; un desliz ahí se sigue.
Con --stdin cada línea es {"learner":"...","body":{...},"placements":{...}}; una línea sin cuerpo toma el de --body.
--tape es una tabla con las columnas from, to y read (y again, para una segunda lectura), o {"measuredWith":"rule","readings":{"O-A":22.2,...}}, en la unidad del cuerpo.
--marks escribe además una hoja de notas para imprimir.
Un criterio es {"level":"strict"|"normal"|"beginner","followThrough":"full"|"half"|"none","wrongCost":0.1,"hintCost":0.05}.
`
};
