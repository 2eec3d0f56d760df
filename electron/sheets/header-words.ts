import { plainHeader } from "./plain.ts";

type Kind = "roster" | "results" | "past";
type Words = Readonly<Record<string, readonly string[]>>;

/**
 * Usual headers of columns in English and Spanish, beside the columns' own names. Where a sheet has several, the first
 * in the list counts: a derby name comes before a name.
 */
const ofAll: Words = {
  league: ["league", "league name", "home league", "team", "club", "liga", "equipo", "nombre de la liga"],
  name: [
    ...[
      "derby name",
      "nombre derby",
      "nombre de derby",
      "skater name",
      "name",
      "skater",
      "athlete",
      "player",
    ],
    ...["nombre", "patinadora", "patinador", "atleta", "jugadora", "jugador", "deportista"],
  ],
  number: [
    ...[
      "number",
      "derby number",
      "skater number",
      "roster number",
      "jersey number",
      "jersey",
      "#",
      "no",
      "nr",
      "num",
    ],
    ...["n", "número", "número de derby", "num de derby"],
  ],
  test: ["test", "test name", "exercise", "prueba", "test físico", "ejercicio"],
  variant: ["variant", "version", "variante", "versión", "modalidad"],
  unit: ["unit", "units", "unidad", "unidades"],
};

const ofMarks: Words = {
  date: ["date", "test date", "date of test", "tested on", "day", "fecha", "fecha de la prueba", "día"],
  mark: ["mark", "result", "score", "value", "best", "resultado", "marca", "valor", "puntuación"],
};

const ofKinds: Readonly<Record<Kind, Words>> = {
  roster: {
    number: [...(ofAll.number ?? []), "dorsal", "bib"],
    birth_year: [
      ...[
        "birth_year",
        "year of birth",
        "born",
        "birth date",
        "birthdate",
        "date of birth",
        "dob",
        "yob",
        "birthday",
      ],
      ...["year", "año de nacimiento", "nacimiento", "fecha de nacimiento", "nacida", "nacido", "año"],
    ],
    category: [
      ...["category", "gender", "sex", "division", "plays as", "skates as", "competes as", "plays in"],
      ...[
        "categoría",
        "género",
        "sexo",
        "juega como",
        "patina como",
        "compite como",
        "juega en",
        "compite en",
      ],
    ],
    guardian_consent: [
      ...[
        "guardian_consent",
        "guardian's consent",
        "guardian",
        "parent consent",
        "parental consent",
        "consent",
      ],
      ...[
        "guardian signed",
        "guardian permission",
        "parent permission",
        "parental permission",
        "permission",
        "permiso de tutela",
        "permiso",
        "permiso tutor",
        "permiso tutora",
        "permiso tutor/a",
        "permiso del tutor",
        "permiso de la tutora",
        "permiso del tutor/a",
        "permiso paterno",
        "permiso familiar",
        "consentimiento",
        "autorización",
        "tutela",
        "tutor",
      ],
    ],
    share: ["share", "shares", "sharing", "share data", "comparte", "compartir", "compartir datos"],
  },
  results: {
    bib: ["bib", "bib number", "bib no", "dorsal", "peto", "n.º de dorsal"],
    reps: ["reps", "repetitions", "repeticiones"],
    laps: ["laps", "vueltas"],
    direction: ["direction", "sentido", "dirección"],
    standing_reach: ["standing_reach", "standing", "reach", "de pie", "alcance de pie", "alcance"],
    touch_reach: ["touch_reach", "touch", "jump reach", "toque", "alcance en salto"],
    time: ["time", "tiempo"],
    finished: ["finished", "acabó", "terminó", "completó"],
    rounds_done: ["rounds_done", "rounds", "rondas", "rondas hechas"],
    done_at: ["done_at", "done at", "time of day", "clock", "hora", "hora del día", "hecho a las"],
    entered_by: ["entered_by", "by", "judge", "initials", "anotó", "anotado por", "juez", "iniciales"],
    note: ["note", "notes", "comment", "comments", "nota", "notas", "comentario", "comentarios"],
  },
  past: { number: [...(ofAll.number ?? []), "dorsal"], ...ofMarks },
};

const plain = new Map(
  Object.entries(ofKinds).map(([kind, words]) => [
    kind,
    new Map(
      Object.entries({ ...ofAll, ...words }).map(([field, all]) => [
        field,
        [...new Set(all.map(plainHeader))],
      ]),
    ),
  ]),
);

/** Returns the possible headers of a column in a kind of sheet, as plain words, the best one first. */
export function wordsOf(kind: Kind, field: string): readonly string[] {
  return plain.get(kind)?.get(field) ?? [plainHeader(field)];
}
