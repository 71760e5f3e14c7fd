/** What each command is asked for with --help. */
export const USAGE = {
	main: `Usage:
  square-across draft METHOD --body FILE.json [--json]   draft one body from its measurements (- reads standard input)
  square-across draft METHOD --bodies FILE.csv           draft a table of bodies: one line of JSON a row
  square-across pattern GARMENT --body FILE.json [--json]   every piece of a garment for one body, and how its seams agree
  square-across pattern GARMENT --bodies FILE.csv        the same for a table of bodies: one line of JSON a row
  square-across export GARMENT --body FILE.json --to FILE   the pattern at true scale: .pdf, .svg, .dxf, .csv or .json; METHOD for a draft
  square-across export GARMENT --bodies FILE.csv --to FOLDER   a file for each row of a table
  square-across draft|pattern|export ... --size 42       for a standard size in the place of --body; men:50, old:36
  square-across sizes --body FILE.json [--json]          which standard size is nearest, in units of measuring error
  square-across check METHOD --body FILE.json --placements FILE.json [--json]   check work that was handed in
  square-across check METHOD --stdin                     the same for many learners: one line of JSON each
  square-across check METHOD --body FILE.json --tape FILE.csv [--json]   check a paper draft by what a tape reads between its points
  square-across serve [--port N] [--host H]              serve the lessons on this machine (builds them when needed)
  square-across build                                    build the lessons for serving
  square-across backup FILE | restore FILE | move --to URL   copy the classes of a school; \`backup --help\` says how
  square-across let-in NAME                              a teacher who lost the passphrase comes in again

METHOD is back-block or another id of lessons/*/method.yaml; \`draft --help\` says how a body is written.
GARMENT is course-dress or another id of lessons/*/garment.yaml; \`pattern --help\` says what may be chosen for it.
With --language es everything is said in Spanish.
`,
	store: `Usage:
  square-across backup FILE               everything of the classes in one file; the server may run on
  square-across restore FILE              puts a backup back into an empty folder or database
  square-across move --to postgres://...  copies the classes into an empty PostgreSQL database, and compares
  square-across let-in NAME               a link by which a teacher who lost the passphrase chooses another, once

The classes are in the folder that SQUARE_ACROSS_DATA names (data, beside the program, when it is not set),
or in the PostgreSQL database that DATABASE_URL names.
`,
	draft: `Usage:
  square-across draft METHOD --body FILE.json [--json]   draft one body; - reads standard input
  square-across draft METHOD --bodies FILE.csv           draft a table of bodies: one line of JSON a row
  square-across draft METHOD --body FILE.json --how-sure [--json]   how far each point can move, because a tape is read unsurely

METHOD is back-block or another id of lessons/*/method.yaml. A body is {"name":"Heron","unit":"cm","bust":96,...},
with "allowances":{"bustEase":4} if you like. Lengths: 96, 96.5, "96,5", "37 3/4" (unit cm, mm or in; cm when none is named).
--reading-error bust=6 says how far one reading strays, in mm, as a standard deviation: of a measurement, or of a kind of them
(largeGirth=9, smallGirth=4, length=5 are the usual ones); it may be given several times.
`,
	pattern: `Usage:
  square-across pattern GARMENT --body FILE.json [--json]   every piece of a garment for one body; - reads standard input
  square-across pattern GARMENT --bodies FILE.csv           for a table of bodies: one line of JSON a row

GARMENT is course-dress or another id of lessons/*/garment.yaml. A body is written as for draft, and may choose
"allowances":{"skirtLength":70,"seamAllowance":1.5} and for single edges "edges":{"front.side":2,"skirt.hem":4}.
A table may have allowances as columns. Without --json the tables are in cm; JSON is in mm.
`,
	export: `Usage:
  square-across export GARMENT --body FILE.json --to FILE     a pattern at true scale, as .pdf, .svg, .dxf, .csv or .json
  square-across export GARMENT --bodies FILE.csv --to FOLDER  a file for each row, named after it
  square-across export METHOD --body FILE.json --to FILE      the same for a draft, which has no .dxf
  square-across export GARMENT --sizes 38,40,42 [--body FILE.json] --to FILE   several sizes on one sheet: .pdf, .svg, .dxf; .csv how they grow

  --as pdf|svg|dxf|csv|json   the kind of file, where the name does not say it (a folder: pdf)
  --apart                     each piece in a file of its own in the folder --to (svg; also --as pdf or dxf)
  --paper a4|letter|a3|a0|roll-60|roll-90   of a pdf (a4)
  --pieces front,back         only these pieces
  --toile                     for a try in cheap cloth: 2.5 cm outside every seam (body-block, sleeved-bodice)
  --scale full|half|quarter   of a pdf or svg, smaller for class work (full)
  --date 2026-01-31           the date that a pdf carries; the same input and date give the same bytes

The drawing file keeps to the layers of ASTM D6673 (withdrawn), from memory: no conformity is promised.
A row of a table that cannot be made is told on standard error, and the others are made; the exit code is then 2.
`,
	sizes: `Usage:
  square-across sizes --body FILE.json [--json]   which size of each table is nearest to a body; - reads standard input

What is apart is counted in measuring errors: how far one reading strays, and for an estimated length how far people of one size differ.
Tables: women (EN 13402-3 girths, from memory), men (the same), old (one size of a book of 1911). --size 42 or men:50 drafts for one.
`,
	check: `Usage:
  square-across check METHOD --body FILE.json --placements FILE.json [--policy FILE.json] [--json] [--marks FILE.pdf]
  square-across check METHOD --stdin [--body FILE.json] [--policy FILE.json]
  square-across check METHOD --body FILE.json --tape FILE.csv [--measured-with tape|rule] [--policy FILE.json] [--json] [--marks FILE.pdf]

Placements are {"A":[0,222],"N":{"typed":"37/6+1"},...}: places across and down in mm, or what was typed, in the body's unit.
What was measured has its own error, the radius in mm that holds it in 95 of 100 cases: {"A":{"at":[0,222],"error":1},...}; it may be neither right nor wrong.
Steps of a draft that METHOD leans on, handed in too, go by its short name: {"back.K":[190,0],...}; a slip there is followed.
With --stdin each line is {"learner":"...","body":{...},"placements":{...}}; a line without a body takes that of --body.
--tape is a table with the columns from, to and read (and again, for a second reading), or {"measuredWith":"rule","readings":{"O-A":22.2,...}}, in the body's unit.
--marks writes a sheet of the marks as well, to be printed.
A policy is {"level":"strict"|"normal"|"beginner","followThrough":"full"|"half"|"none","wrongCost":0.1,"hintCost":0.05}.
`
} as const satisfies Readonly<Record<string, string>>;
